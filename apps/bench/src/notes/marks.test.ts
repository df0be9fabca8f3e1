import { describe, expect, it } from 'vitest';
import demo from '../../../../examples/marsh-hauler/build.json?raw';
import { createModel } from '../worker/model.ts';
import { columnMarks, marksWords } from './marks.ts';

describe('marks at the heads of the path', () => {
  it('count what stands on a column and on what is in it', () => {
    const build = JSON.parse(demo);
    const file = 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855';
    build.notes = { '/path/shafts/shaft-a/seats/pinion': 'a', '/path/shafts/shaft-a': 'b', '/brief/vehicle': 'c' };
    build.pictures = {
      one: { name: 'one', file, of: '/brief/engine/output/seats/sprocket' },
      two: { name: 'two', file, of: '/path/shafts/shaft-a' },
      three: { name: 'three', file },
    };
    const read = createModel().open(JSON.stringify(build), []);
    if (!read.ok) throw new Error(JSON.stringify(read.faults));
    const { path = [], notes = {}, pictures = [] } = read.change;
    const marks = columnMarks({ path, notes, pictures });
    expect([...marks].map(([at, one]) => [at, marksWords(one)])).toEqual([
      ['/path/shafts/shaft-a', '2 notes, picture'],
      ['/brief/engine/output', 'picture'],
    ]);
  });
});
