/** Books and tables that several cases quote; a case adds its example, table or page. */
import type { Source } from '@oddwheel/mechanics/method/method';

type Published = Source & { readonly address?: string };

const COMPANIONS = 'FOSSEE/Python-Textbook-Companions';
const SCILAB = 'FOSSEE/Scilab-TBC-Uploads, commit b1f5c3f';

export const mott = (at: string): Published => ({
  title: 'Machine Elements in Mechanical Design (R. L. Mott)',
  edition: '4th',
  at,
  how: 'read',
  address: 'fliphtml5.com/eraqv/nlwf',
});

/** @param address Where the solution was read; left out for what is quoted from memory. */
export const shigley = (how: 'read' | 'memory', edition: string, at: string, address?: string): Published => ({
  title: "Shigley's Mechanical Engineering Design (Budynas, Nisbett)",
  edition,
  at,
  how,
  ...(address === undefined ? {} : { address }),
});

/** Theory of Machines, as the solutions in the public textbook companions print it; the edition is not stated there. */
export const khurmi = (at: string, chapter: string): Published => ({
  title: 'Theory of Machines (R. S. Khurmi, J. K. Gupta)',
  at,
  how: 'read',
  address: `${COMPANIONS}: Theory_Of_Machines_by_R._S._Khurmi_And_J._K._Gupta/${chapter}.ipynb`,
});

/** Introduction to Machine Design, as the solutions in the public textbook companions print it; the edition is not stated there. */
export const bhandari = (at: string, file: string): Published => ({
  title: 'Introduction to Machine Design (V. B. Bhandari)',
  at,
  how: 'read',
  address: `${SCILAB}: 764/CH14/${file}`,
});

export const bevelChapter = (at: string): Published => ({
  title: 'Textbook chapter 27, Straight Bevel Gears',
  at,
  how: 'read',
  address: 'data set Nemotron-CC-Math-v1, entry “Chapter 27: Straight Bevel Gears”',
});

/** Answer worked out in this project: it checks the arithmetic, not the method. */
export const constructed = (title: string): Published => ({ title, how: 'derived' });
