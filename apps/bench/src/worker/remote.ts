import { type ProxyMarked, type Remote, wrap } from 'comlink';
import type { KeeperApi } from './keeper-api.ts';
import type { ModelApi } from './model-api.ts';

/** The model in its own worker, asked by messages. */
export type RemoteModel = Remote<ModelApi>;

/** What the worker offers: the model, and the keeper of builds where no host has them. */
export type WorkerApi = ModelApi & { readonly keeper: () => KeeperApi & ProxyMarked };

/** Starts the model worker of this page. */
export function startModel(): Remote<WorkerApi> {
  return wrap<WorkerApi>(new Worker(new URL('./worker.ts', import.meta.url), { type: 'module', name: 'model' }));
}
