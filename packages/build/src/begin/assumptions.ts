import { type Assessment, CONSEQUENCES } from '../assess/types.ts';
import type { Patch } from '../document/patch.ts';
import { applyEdit } from '../session.ts';
import type { Session } from '../session-types.ts';
import type { BeginAssumption } from './types.ts';

const GEARS = '/brief/engine/gears';

/** Addresses that stand for more than themselves: every gear is one thing to find out. */
const whole = (address: string): string => (address.startsWith(`${GEARS}/`) ? GEARS : address);

/** What a note of the layout is about, and another choice to try in its place. */
const NOTED: Readonly<Record<string, { readonly name: string; readonly other: readonly Patch[] }>> = {
  '/brief/engine/output/sense': {
    name: 'Sense of the gearbox output',
    other: [{ op: 'set', at: '/brief/engine/output/sense', value: 'negative' }],
  },
  '/brief/engine/output/origin': {
    name: 'Place of the gearbox output',
    other: [{ op: 'set', at: '/brief/engine/output/origin/y', value: '0 mm' }],
  },
  '/path/stages/bevel/module': {
    name: 'Module of the bevel pair',
    other: [{ op: 'set', at: '/path/stages/bevel/module', value: '7 mm' }],
  },
  '/path/shafts/shaft-a/seats': {
    name: 'Diameters and bearings of Shaft A',
    other: [{ op: 'set', at: '/path/shafts/shaft-a/seats/bearing-rear/diameter', value: '80 mm' }],
  },
  '/path/shafts/shaft-b/seats': {
    name: 'Diameters and bearings of Shaft B',
    other: [{ op: 'set', at: '/path/shafts/shaft-b/seats/gear/diameter', value: '20 mm' }],
  },
  '/path/shafts/axle-c/seats': {
    name: 'How the wheel is carried',
    other: [
      { op: 'set', at: '/path/shafts/axle-c/seats/bearing-left/body', value: 'swinging arm' },
      { op: 'set', at: '/path/shafts/axle-c/seats/bearing-right/body', value: 'swinging arm' },
    ],
  },
};

/** Ids of the findings that another choice changes. */
function changed(session: Session, other: readonly Patch[]): readonly string[] {
  const edited = applyEdit(session, other);
  if (!edited.ok) return [];
  const told = ({ findings }: Assessment): Map<string, string> =>
    new Map(findings.map((f) => [f.id, `${f.severity} ${f.reserve?.value ?? ''} ${f.says}`]));
  const [before, after] = [told(session.assessment), told(edited.session.assessment)];
  return [...new Set([...before.keys(), ...after.keys()])].filter((id) => before.get(id) !== after.get(id));
}

/** Findings that hang on each address. */
function hanging({ findings, findOut }: Assessment): ReadonlyMap<string, ReadonlySet<string>> {
  const hangs = new Map<string, Set<string>>();
  const add = (address: string, finding: string): void => {
    const at = whole(address);
    hangs.set(at, (hangs.get(at) ?? new Set()).add(finding));
  };
  for (const finding of findings)
    for (const address of [...finding.dependsOn, ...finding.assumed]) add(address, finding.id);
  for (const open of findOut) for (const finding of open.findings) add(open.address, finding);
  return hangs;
}

/** Gears in their lowest ratios, for the gears that were taken as ranges. */
const lowGears = (gears: readonly string[]): Patch[] =>
  gears.map((range, k): Patch => ({ op: 'set', at: `${GEARS}/${k}`, value: range.split('..')[0] ?? range }));

type Row = { readonly assumption: BeginAssumption; readonly worst: number };

/**
 * Everything that the build stands on and nobody typed, what matters most first: by the number of findings that hang on
 * it, then by the worst that these can do, then by address. For a choice of the layout, they are the findings that change
 * when it is made otherwise; that takes a while, so it pauses before each of them.
 */
export function* assumptionsOf(session: Session): Generator<undefined, readonly BeginAssumption[]> {
  const { assessment, build } = session;
  const hangs = hanging(assessment);
  const consequence = new Map(assessment.findings.map((f) => [f.id, CONSEQUENCES.indexOf(f.consequence)]));
  const notes = build.notes ?? {};
  const row = (
    assumption: Omit<BeginAssumption, 'findings'>,
    findings: Iterable<string> = hangs.get(assumption.address) ?? [],
  ): Row => {
    const ids = [...findings];
    const worst = Math.min(CONSEQUENCES.length, ...ids.map((id) => consequence.get(id) ?? CONSEQUENCES.length));
    return { assumption: { ...assumption, findings: ids.length }, worst };
  };
  const known = new Set(assessment.assumed.map(({ address }) => address));
  const rows: Row[] = [
    ...assessment.assumed.map(({ address, name, text, source }) => row({ address, name, text, why: source })),
    ...assessment.findOut
      .filter(({ address, text }) => text === 'blank' && !known.has(address))
      .map(({ address, name }) =>
        row({
          address,
          name: name.charAt(0).toUpperCase() + name.slice(1),
          text: 'not known',
          why: 'Nothing is taken for it: its findings stay open until it is told.',
        }),
      ),
  ];
  for (const [address, { name, other }] of Object.entries(NOTED)) {
    const why = notes[address];
    if (why === undefined) continue;
    yield;
    rows.push(row({ address, name, text: 'as laid out', why }, changed(session, other)));
  }
  const { gears } = build.brief.engine;
  const why = notes[GEARS];
  if (why !== undefined) {
    yield;
    const ids = new Set([...(hangs.get(GEARS) ?? []), ...changed(session, lowGears(gears))]);
    rows.push(row({ address: GEARS, name: 'Gearbox ratios', text: gears.join(', '), why }, ids));
  }
  return rows
    .sort(
      (a, b) =>
        b.assumption.findings - a.assumption.findings ||
        a.worst - b.worst ||
        (a.assumption.address < b.assumption.address ? -1 : 1),
    )
    .map(({ assumption }) => assumption);
}
