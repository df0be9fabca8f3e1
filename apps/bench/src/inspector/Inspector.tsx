import type { Assessment, Finding, PathElement } from '@oddwheel/build/assess/types';
import type { Structure } from '@oddwheel/build/edit/types';
import type { Fault } from '@oddwheel/build/fault';
import type { Explanation, Field } from '@oddwheel/build/session-types';
import { type JSX, useEffect, useRef, useState } from 'react';
import { Severity } from '../face/Severity.tsx';
import { Notes } from '../notes/Notes.tsx';
import { Pictures } from '../notes/Pictures.tsx';
import { reserveText } from '../numbers/shown.ts';
import { WorkingView } from '../working/WorkingView.tsx';
import { AddOrTakeOut } from './AddOrTakeOut.tsx';
import { FieldGroups } from './FieldGroups.tsx';
import { MakeItHold } from './MakeItHold.tsx';
import { OwnReserve } from './OwnReserve.tsx';
import type { StructureTools } from './structure-tools.ts';

interface Props {
  readonly assessment: Assessment;
  readonly address: string;
  readonly name: string;
  readonly fields: readonly Field[];
  readonly structure: Structure;
  readonly tools: StructureTools;
  /** The findings that stand on it. */
  readonly findings: readonly Finding[];
  readonly opened: Finding | null;
  readonly explanation: Explanation | null;
  readonly locked: string | null;
  /** Hash of the build's text. */
  readonly revision: string;
  /** The element was chosen, so on a small screen the inspector has the page. */
  readonly inspecting: boolean;
  readonly onCommit: (address: string, typed: string | null) => Promise<Fault | null>;
  readonly onOpen: (finding: string) => void;
  readonly onCase: (caseId: string | null) => void;
  readonly onReveal: (address: string) => void;
  readonly onClose: () => void;
}

const PLACES: Readonly<Record<PathElement['kind'], string>> = {
  engine: 'engine and gearbox',
  gearbox: 'engine and gearbox',
  shaft: 'shaft of the path',
  chain: 'roller chain',
  belt: 'toothed belt',
  bevel: 'bevel pair',
  spur: 'spur pair',
  coupling: 'coupling',
  unit: 'bought-in unit',
  ground: 'where the wheel meets it',
};

const OWN_RESERVES = 'None in this build. Open a check, and give it a design reserve of your own with your reason.';

const SMALL_SCREEN = window.matchMedia('(max-width: 899px)');

/** The selected element: its inputs, what follows from them, its findings, and the working of the opened one. */
export function Inspector(props: Props): JSX.Element {
  const { assessment, address, name, fields, structure, tools, findings, opened } = props;
  const element = assessment.path.find((one) => one.address === address);
  const pictures = address === '/pictures';
  const ownNote = structure.notes.find((note) => note.of === address);
  const hangs = structure.present && !['/pictures', '/overrides', '/units'].includes(address);
  const [fresh, setFresh] = useState(false);
  const inPlace = new Set(fields.flatMap(({ groupAddress }) => (groupAddress === null ? [] : [groupAddress])));
  const heading = useRef<HTMLHeadingElement>(null);
  const body = useRef<HTMLElement>(null);
  const openedId = opened?.id ?? null;
  // biome-ignore lint/correctness/useExhaustiveDependencies: a newly opened finding stands at the top
  useEffect(() => {
    body.current?.scrollTo({ top: 0 });
    if (props.inspecting && SMALL_SCREEN.matches) {
      heading.current?.focus({ preventScroll: true });
      window.scrollTo({ top: 0 });
    }
  }, [openedId, props.inspecting]);
  return (
    <section ref={body} className="inspector" aria-labelledby="inspector-heading">
      <div className="section-head">
        <h2 id="inspector-heading" ref={heading} tabIndex={-1}>
          {name}
        </h2>
        <span className="lead">
          {element && element.name.toLowerCase() !== PLACES[element.kind] ? PLACES[element.kind] : ''}
        </span>
        <button type="button" className="link close" onClick={props.onClose}>
          {opened ? 'Close finding' : 'Close'}
        </button>
      </div>
      {!structure.present && (
        <p className="lead">{address === '/overrides' ? OWN_RESERVES : 'Not given in this build.'}</p>
      )}
      {opened && (
        <WorkingView
          finding={opened}
          explanation={props.explanation}
          cases={assessment.cases}
          reserves={assessment.reserves}
          units={assessment.units}
          onCase={props.onCase}
          onReveal={props.onReveal}
        />
      )}
      {opened && opened.severity !== 'holds' && opened.missing.length === 0 && (
        <MakeItHold
          key={`${opened.id} ${props.revision}`}
          finding={opened}
          tools={tools}
          locked={props.locked}
          onOpen={props.onOpen}
        />
      )}
      {opened && opened.reserve !== null && (
        <OwnReserve
          finding={opened}
          has={structure.ownReserves.includes(opened.id)}
          tools={tools}
          locked={props.locked}
          onReveal={props.onReveal}
        />
      )}
      <Notes
        address={address}
        notes={structure.notes}
        fresh={fresh}
        tools={tools}
        locked={props.locked}
        onDone={() => setFresh(false)}
      />
      <Pictures
        pictures={structure.pictures}
        tools={tools}
        locked={props.locked}
        all={pictures}
        onCommit={props.onCommit}
      />
      <AddOrTakeOut
        name={name}
        structure={structure}
        tools={tools}
        locked={props.locked}
        picture={hangs || pictures ? { of: pictures ? null : address } : undefined}
        inPlace={inPlace}
        removals={structure.removals.filter(({ at, sort }) => sort !== 'row' && !inPlace.has(at))}
        onNote={hangs && ownNote === undefined && !fresh ? () => setFresh(true) : null}
      />
      {fields.length > 0 && !pictures && (
        <>
          <h3 className="hidden-name">Inputs</h3>
          <FieldGroups
            fields={fields}
            structure={structure}
            tools={tools}
            locked={props.locked}
            onCommit={props.onCommit}
          />
        </>
      )}
      {element && element.facts.length > 0 && (
        <section className="facts" aria-labelledby="facts-heading">
          <h3 id="facts-heading">What follows from them</h3>
          <dl>
            {element.facts.map((fact) => (
              <div key={fact.key}>
                <dt>{fact.name}</dt>
                <dd>
                  <span className="derived">{fact.text}</span>
                </dd>
              </div>
            ))}
          </dl>
        </section>
      )}
      {findings.length > 0 && (
        <section className="element-findings" aria-labelledby="element-findings-heading">
          <h3 id="element-findings-heading">Its checks</h3>
          <ul className="plain-list">
            {findings.map((finding) => (
              <li key={finding.id}>
                <Severity severity={finding.severity} />
                <button
                  type="button"
                  className="link"
                  aria-expanded={finding.id === opened?.id}
                  onClick={() => props.onOpen(finding.id)}
                >
                  {finding.title}
                </button>
                <b className={`reserve ${finding.severity}`}>
                  {finding.reserve === null ? '' : reserveText(finding.reserve.value)}
                </b>
              </li>
            ))}
          </ul>
        </section>
      )}
    </section>
  );
}
