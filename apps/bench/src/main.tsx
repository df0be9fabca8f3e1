import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import './face/fonts.css';
import './face/face.css';
import './page/page.css';
import './path/path.css';
import './slider/slider.css';
import './steps/steps.css';
import './findings/findings.css';
import './inspector/inspector.css';
import './page/print.css';
import { openOutbox } from '@oddwheel/store/browser-outbox';
import { createBrowserClient } from './link/browser-client.ts';
import { buildToOpen, createBuildActions } from './link/build-actions.ts';
import { createHostClient } from './link/http-host.ts';
import { servedBy } from './link/served.ts';
import { App } from './page/App.tsx';
import { focusField } from './page/focus.ts';
import type { Mode } from './state/actions.ts';
import { createBenchStore } from './state/bench.ts';
import { createActions, createFollower } from './state/bench-actions.ts';
import { deviceName, keptChoice } from './state/device.ts';
import { createDocument } from './state/document.ts';
import { readLook } from './state/look.ts';
import { createRunOut } from './true/run-out.ts';
import { startModel } from './worker/remote.ts';

/** Gloves and a small screen: shop mode, unless this device chose otherwise. */
function firstMode(): Mode {
  const kept = keptChoice('mode');
  if (kept === 'shop' || kept === 'desk') return kept;
  return window.matchMedia('(pointer: coarse) and (max-width: 599px)').matches ? 'shop' : 'desk';
}

function clock(): string {
  const now = new Date();
  return [now.getHours(), now.getMinutes()].map((part) => String(part).padStart(2, '0')).join(':');
}

const root = document.getElementById('root');
if (!root) throw new Error('The page has no place for the bench.');
const store = createBenchStore(readLook(window.location.hash), firstMode(), keptChoice('single-keys') !== 'off');
const model = startModel();
const follow = createFollower(store, model);
// A host keeps the build in its folder; without one the worker keeps builds in the browser.
const server = await servedBy(window.location);
const keeper = server === 'none' ? await model.keeper() : null;
const outbox = await openOutbox();
const client = keeper ? createBrowserClient(keeper, deviceName()) : createHostClient(deviceName(), outbox);
const build = createDocument(store, model, client, follow, clock);
const runOut = createRunOut({
  ...{ client: client.runOut, outbox, device: deviceName() },
  now: () => new Date().toISOString(),
});
const actions = createActions(store, model, build, follow, focusField, {
  builds: createBuildActions(store, build, client, keeper),
  putPicture: client.putPicture,
  pictureUrl: client.pictureUrl,
  runOut,
});

createRoot(root).render(
  <StrictMode>
    <App store={store} actions={actions} model={model} />
  </StrictMode>,
);
// The record goes by the build: by its id in the browser, by its name behind a host.
store.subscribe(({ shelf, assessment }) => {
  const name = shelf ? shelf.open : (assessment?.name ?? null);
  if (name !== null) void runOut.turnTo(name);
});
const start = async (): Promise<void> => {
  if (keeper) store.setState({ shelf: await keeper.start(buildToOpen(keptChoice)) });
  if (server === 'empty host') store.setState({ empty: true });
  else await build.start();
};
start().catch((why: unknown) => store.setState({ trouble: `The build could not be read: ${String(why)}` }));
