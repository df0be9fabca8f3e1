import { expose, proxy } from 'comlink';
import { createKeeper } from './keeper.ts';
import { createModel } from './model.ts';
import type { WorkerApi } from './remote.ts';

const api: WorkerApi = { ...createModel(), keeper: () => proxy(createKeeper()) };
expose(api);
