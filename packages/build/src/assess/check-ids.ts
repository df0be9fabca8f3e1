/** Ids of all checks; with an address they name a finding and may stand in a build's overrides. */
export const CHECK_IDS = [
  'path.forward',
  'output.side-pull',
  'chain.pull',
  'chain.fit',
  'chain.slack',
  'chain.wrap',
  'chain.clear',
  'chain.slope',
  'chain.links',
  'chain.parallel',
  'bevel.meet',
  'bevel.face',
  'bevel.undercut',
  'belt.fit',
  'unit.torque',
  'unit.speed',
  'spur.centres',
  'target.top-speed',
  'target.cruise',
  'target.pull',
  'shop.swing',
  'shop.bar',
  'adjust.slack',
  'adjust.gear',
  'adjust.line',
  'adjust.fitting',
  'adjust.wear',
  'adjust.order',
  'assembly.slide',
  'assembly.enter',
  'assembly.close',
] as const;
export type CheckId = (typeof CHECK_IDS)[number];

const KNOWN: ReadonlySet<string> = new Set(CHECK_IDS);

export function isKnownCheck(id: string): boolean {
  return KNOWN.has(id);
}
