import { expose } from 'comlink';
import { createModel } from './model.ts';

expose(createModel());
