import { describe, expect, it } from 'vitest';
import { readAnswer } from './http-host.ts';

describe('what the host answers to a change', () => {
  it('is saved only with status 200, the text and its hash', () => {
    const body = { text: '{}', hash: 'ab12', undo: 'Chain 1, driver teeth 17 → 16', redo: null };
    expect(readAnswer(200, body)).toEqual({ kind: 'saved', saved: body });
    expect(readAnswer(201, body).kind).toBe('unreached');
    expect(readAnswer(200, { text: '{}' }).kind).toBe('unreached');
  });

  it('is a conflict with the addresses that were changed twice', () => {
    const conflicts = [{ address: '/name', mine: 'a', theirs: 'b', base: 'c' }];
    expect(readAnswer(409, { conflicts })).toEqual({ kind: 'conflict', conflicts });
  });

  it('says why it was refused, or at least its number', () => {
    const error = { problem: 'The build would be at fault.', read: '…', accepted: 'a build without faults' };
    expect(readAnswer(422, { error, faults: [] })).toMatchObject({
      kind: 'refused',
      says: 'The build would be at fault. Accepted: a build without faults',
    });
  });

  it('keeps an edit to be sent again when the host can only not write it just now', () => {
    expect(readAnswer(503, null)).toEqual({ kind: 'unreached', says: 'The host answered 503.' });
    expect(readAnswer(401, { error: { problem: 'This device is not paired.', read: '', accepted: '' } })).toEqual({
      kind: 'unreached',
      says: 'This device is not paired.',
    });
  });
});
