import type { Assessment, Finding, PathElement } from '@oddwheel/build/assess/types';
import type { Fault } from '@oddwheel/build/fault';
import type { Explanation, Field } from '@oddwheel/build/session-types';
import { type JSX, useEffect, useRef } from 'react';
import { Severity } from '../face/Severity.tsx';
import { reserveText } from '../numbers/shown.ts';
import { WorkingView } from '../working/WorkingView.tsx';
import { FieldEditor } from './FieldEditor.tsx';
import { fieldGroups } from './field-groups.ts';

interface Props {
  readonly assessment: Assessment;
  readonly address: string;
  readonly name: string;
  readonly fields: readonly Field[];
  /** The findings that stand on it. */
  readonly findings: readonly Finding[];
  readonly opened: Finding | null;
  readonly explanation: Explanation | null;
  readonly locked: string | null;
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

const SMALL_SCREEN = window.matchMedia('(max-width: 899px)');

/** The selected element: its inputs, what follows from them, its findings, and the working of the opened one. */
export function Inspector(props: Props): JSX.Element {
  const { assessment, address, name, fields, findings, opened } = props;
  const element = assessment.path.find((one) => one.address === address);
  const note = assessment.notes[address];
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
      {note !== undefined && <p className="note">Note: {note}</p>}
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
      {fields.length > 0 ? (
        <h3 className="hidden-name">Inputs</h3>
      ) : (
        <p className="lead">
          Not given in this build. Add “{address}” to build.json in a text editor; the page follows.
        </p>
      )}
      {fieldGroups(fields).map((group) => (
        <fieldset key={group.name ?? ''} className="field-group">
          {group.name !== null && <legend>{group.name}</legend>}
          <div className="fields">
            {group.fields.map((field) => (
              <FieldEditor key={field.address} field={field} locked={props.locked} onCommit={props.onCommit} />
            ))}
          </div>
        </fieldset>
      ))}
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
