import type { Assessment, Finding } from '@oddwheel/build/assess/types';
import { type JSX, memo } from 'react';
import { SeverityShape } from '../face/Severity.tsx';
import { reserveText, show, shownText, withoutNumber } from '../numbers/shown.ts';
import type { DrawnSeat } from '../worker/shaft-api.ts';
import type { KnownLine } from './shaft-rows.ts';
import { WideTable } from './WideTable.tsx';

type Units = Readonly<Record<string, string>>;

/** Checks of a bearing that have a column, in the order in which it is judged. */
const COLUMNS = [
  ['bearing.life', 'Life'],
  ['bearing.static', 'Greatest load'],
  ['bearing.least', 'Least load'],
  ['bearing.speed', 'Speed'],
  ['bearing.tilt', 'Leaning'],
] as const;

/** A life beyond this is as good as for ever, m. */
const FOR_EVER = 1e9;

const force = (value: number, units: Units): string =>
  shownText(show({ value, lo: value, hi: value }, 'force', units, 3));

/** Life as a distance of this duty; other checks by their reserve. */
function cellText({ check, capacity, reserve, severity }: Finding): string {
  if (reserve === null) return withoutNumber(severity);
  if (check !== 'bearing.life' || !capacity) return reserveText(reserve.value);
  // In the unit of the build, as the text of the life itself is.
  return capacity.value > FOR_EVER ? 'no end in sight' : capacity.text;
}

/** The smallest standard bearing on the same seat that does the job in the plate’s space; a dash where none does, or it is not known. */
function smallestText(at: KnownLine['bearings'][number] | undefined): string {
  if (!at || at.smallest === null) return '–';
  return at.smallest === at.row ? `${at.smallest}, as fitted` : at.smallest;
}

/** Every bearing of a shaft: what it carries in the case that is drawn, and its checks over all cases and the duty. */
export const ShaftBearings = memo(function ShaftBearings(props: {
  line: KnownLine;
  seats: readonly DrawnSeat[];
  findings: Assessment['findings'];
  units: Units;
  onOpen: (finding: string) => void;
}): JSX.Element | null {
  const { line, seats, findings, units, onOpen } = props;
  const bearings = seats.filter(({ kind }) => kind === 'bearing');
  const of = (address: string, check: string): Finding | undefined =>
    findings.find((one) => one.check === check && one.address === address);
  if (bearings.length === 0) return null;
  const life = bearings.flatMap(({ address }) => of(address, 'bearing.life')?.demand?.text ?? [])[0];
  return (
    <>
      <h3>Its bearings</h3>
      <WideTable label={`Bearings of ${line.name}`}>
        <table className="figures bearings">
          <caption>
            {life === undefined ? 'Life as you drive' : `Life as you drive, of ${life} wanted`}; reserves of the others;
            loads as drawn: {line.caseName}
          </caption>
          <thead>
            <tr>
              <th scope="col">Bearing</th>
              <th scope="col" className="number">
                Carries across
              </th>
              <th scope="col" className="number">
                along
              </th>
              {COLUMNS.map(([check, name]) => (
                <th key={check} scope="col" className="number">
                  {name}
                </th>
              ))}
              <th scope="col">Smallest that does</th>
            </tr>
          </thead>
          <tbody>
            {bearings.map(({ address, name }) => {
              const at = line.bearings.find((one) => one.address === address);
              return (
                <tr key={address}>
                  <th scope="row">{name}</th>
                  <td className="number">{at ? force(Math.hypot(at.force[0], at.force[1]), units) : '–'}</td>
                  <td className="number">{at ? force(Math.abs(at.force[2]), units) : '–'}</td>
                  {COLUMNS.map(([check]) => {
                    const finding = of(address, check);
                    return (
                      <td key={check} className="number">
                        {finding ? (
                          <button type="button" className="link plain-number" onClick={() => onOpen(finding.id)}>
                            <SeverityShape severity={finding.severity} /> {cellText(finding)}
                            <span className="hidden-name">
                              , {finding.title}, {finding.element}
                            </span>
                          </button>
                        ) : (
                          '–'
                        )}
                      </td>
                    );
                  })}
                  <td>{smallestText(at)}</td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </WideTable>
    </>
  );
});
