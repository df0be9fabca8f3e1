/** Finds a Chromium for the browser tests: one that is named, one of the system, or the one that comes with the packages. */
import {
  createReadStream,
  createWriteStream,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { delimiter, dirname, join } from 'node:path';
import { pipeline } from 'node:stream/promises';
import { brotliDecompressSync, createBrotliDecompress } from 'node:zlib';
import { inRoot } from './run.mjs';

const PACKAGE = 'node_modules/@sparticuz/chromium';
const KEPT = '.oddwheel/browser';

/** Quiet, offline, and with WebGL in software; `--no-sandbox` because tests often run as root in a container. */
const ARGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--enable-unsafe-swiftshader',
];

const NAMES = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'chrome', 'microsoft-edge'];

const USUAL = {
  darwin: [
    '/Applications/Chromium.app/Contents/MacOS/Chromium',
    '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
    '/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge',
  ],
  win32: ['PROGRAMFILES', 'PROGRAMFILES(X86)', 'LOCALAPPDATA']
    .map((name) => process.env[name])
    .filter((folder) => folder !== undefined)
    .flatMap((folder) => [
      join(folder, 'Chromium/Application/chrome.exe'),
      join(folder, 'Google/Chrome/Application/chrome.exe'),
      join(folder, 'Microsoft/Edge/Application/msedge.exe'),
    ]),
};

function systemBrowser() {
  const folders = process.platform === 'win32' ? [] : (process.env.PATH ?? '').split(delimiter).filter((x) => x !== '');
  const onPath = NAMES.flatMap((name) => folders.map((folder) => join(folder, name)));
  return [...onPath, ...(USUAL[process.platform] ?? [])].find((path) => existsSync(path));
}

/** Writes the plain files of a tar archive (POSIX ustar) below a folder. */
function untar(bytes, folder) {
  for (let at = 0; at + 512 <= bytes.length; ) {
    const field = (from, length) => bytes.toString('latin1', at + from, at + from + length).replace(/\0.*$/s, '');
    const name = field(0, 100);
    if (name === '') break;
    const size = Number.parseInt(field(124, 12), 8);
    const type = field(156, 1);
    if ((type === '0' || type === '') && !name.endsWith('/')) {
      const path = join(folder, name);
      mkdirSync(dirname(path), { recursive: true });
      writeFileSync(path, bytes.subarray(at + 512, at + 512 + size), { mode: 0o755 });
    }
    at += 512 + Math.ceil(size / 512) * 512;
  }
}

/** For a system without a font set-up of its own: the fonts that come with the packaged browser. */
const FONTS = '<?xml version="1.0"?>\n<fontconfig><dir prefix="relative">fonts</dir></fontconfig>\n';

async function unpack(folder) {
  const bin = inRoot(`${PACKAGE}/bin`);
  for (const name of ['al2023', 'fonts', 'swiftshader'])
    untar(brotliDecompressSync(readFileSync(join(bin, `${name}.tar.br`))), folder);
  writeFileSync(join(folder, 'fonts.conf'), FONTS);
  await pipeline(
    createReadStream(join(bin, 'chromium.br')),
    createBrotliDecompress(),
    createWriteStream(join(folder, 'chromium'), { mode: 0o755 }),
  );
}

/** Unpacks the packaged Chromium once; runs side by side each unpack into their own folder, and the first one stays. */
async function packagedBrowser() {
  const { version } = JSON.parse(readFileSync(inRoot(`${PACKAGE}/package.json`), 'utf8'));
  const folder = inRoot(`${KEPT}/${version}`);
  if (!existsSync(folder)) {
    mkdirSync(inRoot(KEPT), { recursive: true });
    const fresh = mkdtempSync(inRoot(`${KEPT}/unpacking-`));
    try {
      await unpack(fresh);
      renameSync(fresh, folder);
    } catch (error) {
      rmSync(fresh, { recursive: true, force: true });
      if (!existsSync(folder)) throw error;
    }
  }
  const libraries = [join(folder, 'lib'), ...(process.env.LD_LIBRARY_PATH ? [process.env.LD_LIBRARY_PATH] : [])];
  const env = { ...process.env, LD_LIBRARY_PATH: libraries.join(delimiter) };
  if (!existsSync('/etc/fonts/fonts.conf')) env.FONTCONFIG_PATH = folder;
  return { executablePath: join(folder, 'chromium'), env, args: ARGS };
}

/**
 * The browser that tests launch: `chromium.launch(await findBrowser())` of playwright-core. Give each context a
 * `locale`: the packaged browser reports one that `Intl` refuses.
 * @param only looks at one place alone: 'named', 'system' or 'packaged'.
 * @throws Error with one line that says how to give a browser.
 */
export async function findBrowser(only) {
  const named = process.env.ODDWHEEL_BROWSER;
  if (named && (!only || only === 'named')) {
    if (!existsSync(named))
      throw new Error(
        `ODDWHEEL_BROWSER names ${named}, which is not there. Give the path of a Chromium or Chrome program.`,
      );
    return { executablePath: named, env: process.env, args: ARGS };
  }
  const system = only && only !== 'system' ? undefined : systemBrowser();
  if (system) return { executablePath: system, env: process.env, args: ARGS };
  const packaged = process.platform === 'linux' && process.arch === 'x64' && existsSync(inRoot(PACKAGE));
  if (packaged && (!only || only === 'packaged')) return packagedBrowser();
  throw new Error(
    'No browser for the browser tests. Install Chromium or Chrome, or set ODDWHEEL_BROWSER to the path of one.',
  );
}
