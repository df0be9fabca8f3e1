import type { EditRequest } from '@oddwheel/build/edit/types';
import type { Fault } from '@oddwheel/build/fault';
import type { Readings } from '@oddwheel/build/measure/types';
import { type JSX, useCallback, useMemo, useState } from 'react';
import { flushSync } from 'react-dom';
import { AssumedList, FindOutList } from '../findings/Lists.tsx';
import { FieldEditor } from '../inspector/FieldEditor.tsx';
import type { ScreenProps } from '../steps/screen.ts';
import { BriefContents, focusOnSection, focusOnSheet } from './BriefContents.tsx';
import { CurvePanel } from './CurvePanel.tsx';
import { SHEET, SheetSection } from './SheetSection.tsx';
import { curveOf, curveUnits, sectionOf, sheetAddresses, sheetSections } from './sections.ts';
import { useSheetFields } from './use-sheet-fields.ts';
import './brief.css';

/** All of the brief on one sheet: what is given, what is assumed, what is blank, and what to find out next. */
export function BriefScreen({ state, actions, model }: ScreenProps): JSX.Element | null {
  const { assessment, parts, hash } = state;
  const { commitField } = actions;
  const addresses = useMemo(() => sheetAddresses(parts), [parts]);
  const fields = useSheetFields(model, addresses, hash);
  const sections = useMemo(() => (fields ? sheetSections(parts, fields) : []), [parts, fields]);
  const engine = fields?.get('/brief/engine');
  const curve = useMemo(() => (engine ? curveOf(engine) : null), [engine]);
  const given = useMemo(
    (): Readings =>
      Object.fromEntries(
        [...(fields?.values() ?? [])].flat().flatMap(({ address, text }) => (text === null ? [] : [[address, text]])),
      ),
    [fields],
  );
  const edit = useCallback(
    async (request: EditRequest): Promise<readonly Fault[]> => {
      const made = await model.structureEdit(request);
      if (!made.ok) return made.faults;
      const fault = await actions.applyEdit(made.name, made.patches);
      return fault ? [fault] : [];
    },
    [model, actions],
  );
  const measure = useCallback(
    (id: string, address: string, readings: Readings) => model.measure(id, address, readings),
    [model],
  );
  const [turned, setTurned] = useState<ReadonlyMap<string, boolean>>(new Map());
  const [small] = useState(() => window.matchMedia('(max-width: 899px)').matches);
  const fold = useCallback(
    (key: string, open: boolean): void => setTurned((before) => new Map(before).set(key, open)),
    [],
  );
  const isOpen = (key: string): boolean => turned.get(key) ?? !small;
  const openSection = (key: string): void => {
    flushSync(() => fold(key, true));
    focusOnSection(key);
  };
  const reveal = useCallback(
    (address: string): void => {
      const section = sectionOf(sections, address);
      if (section) flushSync(() => fold(section.key, true));
      if (!section || !focusOnSheet(address)) actions.reveal(address);
    },
    [actions, sections, fold],
  );
  const locked = state.fileFaults.length > 0 ? 'the file has faults' : null;
  const units = assessment?.units;
  const curvePanel = useMemo(
    () =>
      units && (
        <CurvePanel curve={curve} units={units} locked={locked !== null} onEdit={edit}>
          <div className="fields">
            {curveUnits(engine ?? []).map((field) => (
              <FieldEditor key={field.address} field={field} locked={locked} place={SHEET} onCommit={commitField} />
            ))}
          </div>
        </CurvePanel>
      ),
    [curve, engine, units, locked, edit, commitField],
  );
  if (!assessment) return null;
  const tools = {
    build: assessment.name,
    locked,
    units: assessment.units,
    given,
    onCommit: commitField,
    onMeasure: measure,
    onReveal: reveal,
    onSelect: actions.select,
  };
  return (
    <div className="brief-sheet">
      <div className="brief-top">
        <BriefContents sections={sections} onOpen={openSection} />
        <FindOutList items={assessment.findOut} onReveal={reveal} />
        <AssumedList items={assessment.assumed} onReveal={reveal} />
      </div>
      {sections.map((section) => (
        <SheetSection key={section.key} section={section} open={isOpen(section.key)} onFold={fold} {...tools}>
          {section.key === 'engine' && curvePanel}
        </SheetSection>
      ))}
    </div>
  );
}
