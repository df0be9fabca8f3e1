/** On the workshop's network every device is paired first; this machine itself is not asked. */
import type { HttpBindings } from '@hono/node-server';
import type { Context, Hono, Next } from 'hono';
import { getCookie, setCookie } from 'hono/cookie';
import { isLoopback } from './guard.ts';
import type { Pairing } from './pairing.ts';
import { PAIRING_PAGE, PAIRING_POLICY } from './pairing-page.ts';
import { asRead, refuse } from './problem.ts';
import { EDIT_LIMIT, limitBody, readDevice, readJsonObject } from './request-body.ts';

const PAIR = '/api/pair';

/** Cookies don't tell ports apart, so two hosts on one machine need two names. */
const cookieName = (port: number): string => `oddwheel-${port}`;

const remoteAddress = (c: Context): string | undefined => (c.env as HttpBindings).incoming.socket.remoteAddress;

/** Lets paired devices and this machine pass; others get the pairing page at "/", and 401 elsewhere. */
export function requirePairing(pairing: Pairing, port: () => number) {
  return async (c: Context, next: Next): Promise<Response | undefined> => {
    const paired = pairing.deviceOf(getCookie(c, cookieName(port()))) !== null;
    if (paired || isLoopback(remoteAddress(c)) || c.req.path === PAIR) {
      await next();
      return undefined;
    }
    if (c.req.path === '/' && c.req.method === 'GET') {
      c.header('Content-Security-Policy', PAIRING_POLICY);
      return c.html(PAIRING_PAGE, 401);
    }
    const accepted = 'a device that was paired at / with the code from the terminal';
    return refuse(c, 401, { problem: 'This device is not paired.', read: 'no pairing', accepted });
  };
}

/** `POST /api/pair` `{code, device}`: gives a cookie for the right code. */
export function addPairingApi(app: Hono, pairing: Pairing, port: () => number): void {
  app.post(PAIR, limitBody(EDIT_LIMIT), async (c) => {
    const body = await readJsonObject(c);
    if (!body.ok) return refuse(c, 400, body.error);
    const { code } = body.value;
    const device = readDevice(body.value.device);
    if (!device.ok) return refuse(c, 400, device.error);
    const sixFigures = 'the six figures that the terminal shows';
    if (typeof code !== 'string' || device.value === null) {
      const accepted = `{"code": ${sixFigures}, "device": a name for this device}`;
      return refuse(c, 400, {
        problem: 'The code or the name of the device is missing.',
        read: asRead(body.value),
        accepted,
      });
    }
    const paired = pairing.pair(code, device.value);
    if (paired.ok) {
      setCookie(c, cookieName(port()), paired.token, { httpOnly: true, sameSite: 'Strict', path: '/' });
      return c.json({ device: device.value });
    }
    if (paired.why === 'paused') {
      const problem = `Too many wrong codes. There is a new code; wait ${paired.seconds} s.`;
      c.header('Retry-After', String(paired.seconds));
      return refuse(c, 429, { problem, read: 'a code', accepted: sixFigures });
    }
    const problem = `This is not the code. ${paired.left} ${paired.left === 1 ? 'try is' : 'tries are'} left.`;
    return refuse(c, 401, { problem, read: 'another code', accepted: sixFigures });
  });
}
