import type { Context } from 'hono';

/** What is wrong with a request: said, read, accepted. */
export interface Problem {
  readonly problem: string;
  readonly read: string;
  readonly accepted: string;
}

type RefusalStatus = 400 | 401 | 403 | 404 | 405 | 409 | 413 | 415 | 422 | 429 | 500 | 503;

/** Answers `{error: {problem, read, accepted}}`, with `more` beside it. */
export function refuse(c: Context, status: RefusalStatus, error: Problem, more: object = {}): Response {
  return c.json({ error, ...more }, status);
}

/** A value as it was read, short enough for a message. */
export function asRead(value: unknown): string {
  if (value === undefined) return 'nothing';
  const text = typeof value === 'string' ? value : JSON.stringify(value);
  return text.length > 80 ? `${text.slice(0, 79)}…` : text;
}
