import { describe, expect, it } from 'vitest';
import { latestWins } from './latest.ts';

describe('slider moves, the newest wins', () => {
  it('runs the first at once, drops what was overtaken, and ends with the newest', async () => {
    const ran: number[] = [];
    const release: (() => void)[] = [];
    const ask = latestWins<number>(
      (request) => {
        ran.push(request);
        return new Promise((resolve) => release.push(resolve));
      },
      () => undefined,
    );
    ask(1);
    ask(2);
    ask(3);
    ask(4);
    expect(ran).toEqual([1]);
    release[0]?.();
    await Promise.resolve();
    await Promise.resolve();
    expect(ran).toEqual([1, 4]);
    release[1]?.();
    await new Promise((resolve) => setTimeout(resolve));
    ask(5);
    expect(ran).toEqual([1, 4, 5]);
  });

  it('tells of a request that failed, and goes on', async () => {
    const ran: number[] = [];
    const failures: unknown[] = [];
    const ask = latestWins<number>(
      (request) => {
        ran.push(request);
        return request === 1 ? Promise.reject(new Error('refused')) : Promise.resolve();
      },
      (why) => failures.push(why),
    );
    ask(1);
    ask(2);
    await new Promise((resolve) => setTimeout(resolve));
    expect(ran).toEqual([1, 2]);
    expect(failures).toEqual([new Error('refused')]);
  });
});
