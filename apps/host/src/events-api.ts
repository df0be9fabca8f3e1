/** Live updates: server-sent events (HTML Living Standard, section "Server-sent events"). */
import type { Hono } from 'hono';
import { createQueue, type Hub } from './hub.ts';
import { buildEvent, type Live } from './live.ts';

/** Time between signs of life, ms; without one a network may take the connection for dead. */
const BEAT = 15_000;

/**
 * `GET /api/events`: the build and the log as they stand, then each change. A page that was away needs no more than that:
 * it is told how things stand when it comes back.
 */
export function addEventsApi(app: Hono, hub: Hub, live: Live): void {
  app.get('/api/events', async (c) => {
    const queue = createQueue();
    // Listens first and reads then, so that no change falls between the two.
    const remove = hub.add({ send: queue.push, end: queue.end });
    let beat: NodeJS.Timeout | undefined;
    const end = (): void => {
      remove();
      queue.end();
      clearInterval(beat);
    };
    try {
      const state = await live.state();
      queue.push({ event: 'build', data: buildEvent(state, null) });
      queue.push({ event: 'log', data: { entries: state.log } });
      queue.push({ event: 'runOut', data: {} });
    } catch (error) {
      end();
      throw error;
    }
    beat = setInterval(() => queue.push({ event: 'beat', data: {} }), BEAT);
    const encoder = new TextEncoder();
    const body = new ReadableStream<Uint8Array>({
      pull: async (controller) => {
        const next = await queue.next();
        if (next === null) {
          end();
          controller.close();
        } else controller.enqueue(encoder.encode(`event: ${next.event}\ndata: ${JSON.stringify(next.data)}\n\n`));
      },
      cancel: end,
    });
    return c.body(body, 200, { 'Content-Type': 'text/event-stream', 'Cache-Control': 'no-store' });
  });
}
