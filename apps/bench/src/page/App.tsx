import { type JSX, useEffect, useMemo, useState } from 'react';
import { useStore } from 'zustand';
import { FindDialog } from '../find/FindDialog.tsx';
import { Inspector } from '../inspector/Inspector.tsx';
import { structureTools } from '../inspector/structure-tools.ts';
import { redoName, savedWords, undoName } from '../link/sync.ts';
import { BuildsDialog } from '../link-panels/BuildsDialog.tsx';

import { columnMarks } from '../notes/marks.ts';
import { PathTable } from '../path/PathTable.tsx';
import { GearScale } from '../slider/GearScale.tsx';
import { StartSheet } from '../start/StartSheet.tsx';
import type { Actions } from '../state/actions.ts';
import { type BenchStore, elementInView, elementOf, nameOfElement, stripKind } from '../state/bench.ts';
import { StepScreen } from '../steps/StepScreen.tsx';
import { StepsBar } from '../steps/StepsBar.tsx';
import { STEPS } from '../steps/steps.ts';
import type { RemoteModel } from '../worker/remote.ts';
import { Footer } from './Footer.tsx';
import { useReturningFocus } from './focus.ts';
import { Head, PlainHead } from './Head.tsx';
import { KeysDialog } from './KeysDialog.tsx';
import { ConflictPanel, FaultList, OfflineBand, PageOnlyBand, TroubleBand } from './Notices.tsx';
import { usePageKeys } from './page-keys.ts';
import { Toast } from './Toast.tsx';

/** The whole page. */
export function App(props: { store: BenchStore; actions: Actions; model: RemoteModel }): JSX.Element {
  const { store, actions, model } = props;
  const state = useStore(store);
  const sets = useStore(actions.runOut.store, (record) => record.sets);
  const [shown, setShown] = useState<'keys' | 'find' | 'builds' | null>(null);
  const { assessment, sync, look, shelf } = state;
  const place = shelf?.place ?? 'host';
  const element = elementInView(state);
  const step = STEPS.find((one) => one.id === look.step) ?? STEPS[0];
  const inspecting = look.element !== null;
  const { path, notes, pictures } = assessment ?? {};
  useReturningFocus(inspecting);
  const marks = useMemo(
    () => columnMarks({ path: path ?? [], notes: notes ?? {}, pictures: pictures ?? [] }),
    [path, notes, pictures],
  );
  const tools = useMemo(() => structureTools(model, actions), [model, actions]);

  useEffect(() => {
    document.documentElement.dataset.mode = state.mode;
  }, [state.mode]);
  useEffect(() => {
    if (assessment) document.title = `${step.name} of ${assessment.name}, Oddwheel`;
  }, [assessment, step]);
  usePageKeys(store, actions, setShown);

  const opened = assessment?.findings.find((finding) => finding.id === look.finding) ?? null;
  const stripOpen = state.strip[stripKind(look.step)];
  const locked = state.fileFaults.length > 0 ? 'the file has faults' : null;
  return (
    <div className="app sheet" data-inspecting={inspecting ? 'yes' : 'no'} data-ends={assessment?.ends ?? 'not yet'}>
      <div className="frame">
        <button type="button" className="skip" onClick={() => document.getElementById('main')?.focus()}>
          To the path
        </button>
        <button type="button" className="skip" onClick={() => document.getElementById('step-sheet')?.focus()}>
          To the sheet of this step
        </button>
        {!assessment && <PlainHead onBuilds={shelf && sync ? () => setShown('builds') : null} />}
        {assessment && sync && (
          <Head
            name={assessment.name}
            about={assessment.about}
            saved={state.working ? 'working' : savedWords(sync, place)}
            undo={locked === null ? undoName(sync) : null}
            redo={locked === null ? redoName(sync) : null}
            units={assessment.units}
            mode={state.mode}
            actions={actions}
            onShow={setShown}
          />
        )}
        <main id="main" tabIndex={-1}>
          {sync && !sync.online && <OfflineBand kept={sync.pending.length} place={place} />}
          {place === 'page' && sync && <PageOnlyBand onSave={() => void actions.builds.saveFile()} />}
          {state.trouble !== null && <TroubleBand trouble={state.trouble} onDismiss={actions.dismissTrouble} />}
          {state.fileFaults.length > 0 && <FaultList faults={state.fileFaults} lastGood={assessment !== null} />}
          {sync && sync.held.length > 0 && <ConflictPanel held={sync.held} actions={actions} />}
          {(state.empty || shelf?.open === null) && (
            <StartSheet model={model} builds={actions.builds} shelf={shelf} onBegun={() => actions.goTo('layout')} />
          )}
          {!assessment &&
            !state.empty &&
            shelf?.open !== null &&
            state.fileFaults.length === 0 &&
            state.trouble === null && <p className="band">Reading the build.</p>}
          {assessment && (
            <>
              <section className="strip" aria-labelledby="path-heading">
                <h2 id="path-heading" className="hidden-name">
                  Path of power
                </h2>
                <PathTable
                  path={assessment.path}
                  shafts={assessment.shafts}
                  findings={assessment.findings}
                  units={assessment.units}
                  marks={marks}
                  selected={element}
                  open={stripOpen}
                  onSelect={actions.select}
                  onOpen={actions.openStrip}
                />
                <GearScale
                  gears={assessment.gears}
                  here={assessment.here}
                  asked={state.asked}
                  note={assessment.hereNote}
                  folded={!stripOpen}
                  units={assessment.units}
                  onMove={actions.moveHere}
                />
              </section>
              <StepsBar current={look.step} assessment={assessment} sets={sets} onGo={actions.goTo} />
              <div className="columns">
                <div className="column-left" id="step-sheet" tabIndex={-1}>
                  <StepScreen state={state} actions={actions} model={model} />
                </div>
                <div className="column-right">
                  {element !== null && state.fields?.address === element && (
                    <Inspector
                      key={element}
                      assessment={assessment}
                      address={element}
                      name={nameOfElement(state, element)}
                      fields={state.fields.fields}
                      structure={state.fields.structure}
                      tools={tools}
                      opened={opened && elementOf(state, opened.address) === element ? opened : null}
                      findings={assessment.findings.filter((one) => elementOf(state, one.address) === element)}
                      explanation={state.explanation}
                      revision={state.hash}
                      locked={locked}
                      inspecting={inspecting}
                      onCommit={actions.commitField}
                      onOpen={actions.openFinding}
                      onCase={actions.workCase}
                      onReveal={actions.reveal}
                      onClose={actions.close}
                    />
                  )}
                </div>
              </div>
            </>
          )}
        </main>
        {assessment && (
          <Footer name={assessment.name} step={step} units={assessment.units} revision={state.hash.slice(0, 7)} />
        )}
      </div>
      <p className="hidden-name" aria-live="polite">
        {state.said}
      </p>
      {state.toast && (
        <Toast key={state.toast.id} text={state.toast.text} onUndo={actions.undo} onGone={actions.dismissToast} />
      )}
      {shown === 'keys' && (
        <KeysDialog singleKeys={state.singleKeys} onSingleKeys={actions.setSingleKeys} onClose={() => setShown(null)} />
      )}
      {shown === 'builds' && (
        <BuildsDialog
          shelf={shelf}
          name={assessment?.name ?? null}
          builds={actions.builds}
          onClose={() => setShown(null)}
        />
      )}
      {shown === 'find' && assessment && (
        <FindDialog
          assessment={assessment}
          parts={state.parts}
          model={model}
          actions={actions}
          onClose={() => setShown(null)}
        />
      )}
    </div>
  );
}
