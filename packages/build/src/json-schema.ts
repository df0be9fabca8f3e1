export { buildJsonSchema } from './schema/describe.ts';
