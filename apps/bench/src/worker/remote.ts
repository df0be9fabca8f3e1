import { type Remote, wrap } from 'comlink';
import type { ModelApi } from './model-api.ts';

/** The model in its own worker, asked by messages. */
export type RemoteModel = Remote<ModelApi>;

/** Starts the model worker of this page. */
export function startModel(): RemoteModel {
  return wrap<ModelApi>(new Worker(new URL('./worker.ts', import.meta.url), { type: 'module', name: 'model' }));
}
