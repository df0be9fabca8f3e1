import type { JSX } from 'react';
import { SHEET, sectionHeadingId } from './SheetSection.tsx';
import { type Section, stateOf } from './sections.ts';
import './band.css';
import { fieldInputId } from '../inspector/FieldEditor.tsx';

/** Puts the focus into the sheet's field of an address, or the first one beneath it; false where the sheet has none. */
export function focusOnSheet(address: string): boolean {
  const id = fieldInputId(address, SHEET);
  const field =
    document.getElementById(id) ??
    [...document.querySelectorAll<HTMLElement>('.brief-section .field :is(input, select)')].find((input) =>
      input.id.startsWith(`${id}/`),
    );
  field?.focus({ preventScroll: true });
  field?.scrollIntoView({ block: 'center' });
  return field != null;
}

/** Puts the focus on the heading of a section. */
export function focusOnSection(key: string): void {
  const heading = document.querySelector<HTMLElement>(`#${sectionHeadingId(key)} button`);
  heading?.focus({ preventScroll: true });
  heading?.scrollIntoView({ block: 'start' });
}

/** What the sheet holds, one ruled cell each, with what is blank or assumed there. */
export function BriefContents(props: { sections: readonly Section[]; onOpen: (key: string) => void }): JSX.Element {
  const { sections, onOpen } = props;
  return (
    <nav className="brief-band" aria-label="Parts of the brief">
      <ul>
        {sections.map((section) => (
          <li key={section.key}>
            <button type="button" onClick={() => onOpen(section.key)}>
              {section.name}
              <span className="lead">{stateOf(section.fields)}</span>
            </button>
          </li>
        ))}
      </ul>
    </nav>
  );
}
