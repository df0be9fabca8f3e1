import { describe, expect, it } from 'vitest';
import { hostFault, isLoopback, originFault, ownHosts } from './guard.ts';

const own = ownHosts(4717, ['192.168.7.20']);

describe('Host', () => {
  it.each(['127.0.0.1:4717', 'localhost:4717', 'LOCALHOST:4717', '[::1]:4717', '192.168.7.20:4717'])(
    'takes %s',
    (host) => expect(hostFault(host, own)).toBeNull(),
  );
  it.each([
    'evil.example:4717',
    '127.0.0.1',
    '127.0.0.1:80',
    'localhost:4717.evil.example',
    '192.168.7.21:4717',
    undefined,
  ])('refuses %s', (host) => expect(hostFault(host, own)?.read).toContain(host ?? 'none'));
  it('takes a name without port where browsers leave the port out', () =>
    expect(hostFault('localhost', ownHosts(80, []))).toBeNull());
});

describe('Origin', () => {
  it('takes the bench, and a program that is no browser', () => {
    expect(originFault('http://127.0.0.1:4717', 'same-origin', own)).toBeNull();
    expect(originFault(undefined, undefined, own)).toBeNull();
    expect(originFault(undefined, 'none', own)).toBeNull();
  });
  it.each([
    ['http://evil.example', undefined],
    ['https://127.0.0.1:4717', undefined],
    ['http://127.0.0.1:8080', undefined],
    ['null', undefined],
    [undefined, 'cross-site'],
    [undefined, 'same-site'],
  ])('refuses origin %s, site %s', (origin, site) => expect(originFault(origin, site, own)).not.toBeNull());
});

describe('addresses of this machine', () => {
  it.each(['127.0.0.1', '127.9.9.9', '::1', '::ffff:127.0.0.1'])('%s is one', (a) => expect(isLoopback(a)).toBe(true));
  it.each(['192.168.7.20', '::ffff:10.0.0.1', '127.evil', '', undefined])('%s is none', (a) =>
    expect(isLoopback(a)).toBe(false),
  );
});
