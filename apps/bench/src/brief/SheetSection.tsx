import type { Fault } from '@oddwheel/build/fault';
import { measuresFor } from '@oddwheel/build/measure/measures';
import type { Measured, Readings } from '@oddwheel/build/measure/types';
import type { Field } from '@oddwheel/build/session-types';
import { type JSX, memo, type ReactNode } from 'react';
import { FieldEditor } from '../inspector/FieldEditor.tsx';
import { faultSentence } from '../inspector/fault-sentence.ts';
import { fieldGroups } from '../inspector/field-groups.ts';
import { MeasureBox } from './MeasureBox.tsx';
import { type Section, stateOf } from './sections.ts';

/** Place of the sheet's fields on the page, apart from those of the inspector. */
export const SHEET = 'sheet-';

/** Id of a section's heading. */
export const sectionHeadingId = (key: string): string => `brief-${key}`;

export interface SectionTools {
  /** Name of the build. */
  readonly build: string;
  readonly locked: string | null;
  readonly units: Readonly<Record<string, string>>;
  /** Values that a sum may begin with, by address. */
  readonly given: Readings;
  readonly onCommit: (address: string, typed: string | null) => Promise<Fault | null>;
  readonly onMeasure: (measure: string, address: string, readings: Readings) => Promise<Measured>;
  readonly onReveal: (address: string) => void;
  readonly onSelect: (address: string) => void;
}

interface HeadProps {
  readonly id: string;
  readonly name: string;
  readonly state: string;
  readonly open: boolean;
  readonly onFold: (open: boolean) => void;
  readonly children?: ReactNode;
}

/** Heading of a section: it folds the section, and says what is blank in it. */
export function SheetHead({ id, name, state, open, onFold, children }: HeadProps): JSX.Element {
  return (
    <div className="section-head">
      <h2 id={id}>
        <button type="button" className="section-fold" aria-expanded={open} onClick={() => onFold(!open)}>
          {name}
        </button>
      </h2>
      <span className="lead">{state}</span>
      {children}
    </div>
  );
}

interface Props extends SectionTools {
  readonly section: Section;
  readonly open: boolean;
  readonly onFold: (key: string, open: boolean) => void;
  /** What stands between the heading and the fields. */
  readonly children?: ReactNode;
}

/** One ruled part of the brief: every field of it, what is blank, and what blanks stand on. */
export const SheetSection = memo(function SheetSection(props: Props): JSX.Element {
  const { section, open, onFold, children, ...tools } = props;
  const { key, name, address, fields } = section;
  return (
    <section className="brief-section" aria-labelledby={sectionHeadingId(key)}>
      <SheetHead
        id={sectionHeadingId(key)}
        name={name}
        state={stateOf(fields)}
        open={open}
        onFold={(wanted) => onFold(key, wanted)}
      >
        {open && (
          <button type="button" className="link" onClick={() => tools.onSelect(address)}>
            {fields.length === 0 ? 'Add it' : 'Add or take out'}
            <span className="hidden-name">: {name}</span>
          </button>
        )}
      </SheetHead>
      {open && children}
      {open &&
        fieldGroups(fields).map((group) => (
          <fieldset key={group.name ?? ''} className="field-group">
            {group.name !== null && <legend>{group.name}</legend>}
            <div className="fields">
              {group.fields.map((field) => (
                <SheetField key={field.address} field={field} {...tools} />
              ))}
            </div>
          </fieldset>
        ))}
    </section>
  );
});

function SheetField({ field, ...tools }: SectionTools & { field: Field }): JSX.Element {
  const { build, locked, units, given, onCommit, onMeasure, onReveal } = tools;
  const measures = measuresFor(field.address);
  if (measures.length === 0) return <FieldEditor field={field} locked={locked} place={SHEET} onCommit={onCommit} />;
  return (
    <div className="brief-measured">
      {/* The recipe stands in the box, step by step. */}
      <FieldEditor field={{ ...field, recipe: null }} locked={locked} place={SHEET} onCommit={onCommit} />
      <MeasureBox
        name={field.name}
        place={`${build} ${field.address}`}
        measures={measures}
        given={given}
        units={units}
        locked={locked !== null}
        takes={(text) => `Put ${text} into the field`}
        run={(measure, readings) => onMeasure(measure, field.address, readings)}
        onTake={async (text) => {
          const fault = await onCommit(field.address, text);
          return fault && faultSentence(fault, field.name);
        }}
        onReveal={onReveal}
      />
    </div>
  );
}
