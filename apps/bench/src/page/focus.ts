import { useEffect, useRef } from 'react';
import { fieldInputId } from '../inspector/FieldEditor.tsx';

/** Puts the focus on the next or previous finding of the list; from elsewhere, on the opened or the first one. */
export function moveFinding(step: 1 | -1): void {
  const rows = [...document.querySelectorAll<HTMLElement>('[data-finding]')];
  const now = rows.findIndex((row) => row.matches(':focus'));
  const opened = rows.findIndex((row) => row.getAttribute('aria-expanded') === 'true');
  const next = now >= 0 ? now + step : opened >= 0 ? opened + step : 0;
  const row = rows[Math.min(rows.length - 1, Math.max(0, next))];
  row?.focus();
  row?.scrollIntoView({ block: 'nearest' });
}

/** Puts the focus into the field of an address, or the first field beneath it, once the inspector has drawn it. */
export function focusField(address: string): void {
  requestAnimationFrame(() => {
    const exact = document.getElementById(fieldInputId(address));
    const beneath = [...document.querySelectorAll<HTMLElement>('.field input, .field select')].find((input) =>
      input.id.startsWith(`${fieldInputId(address)}/`),
    );
    const field = exact ?? beneath ?? document.getElementById('inspector-heading');
    field?.focus();
    field?.scrollIntoView({ block: 'center' });
  });
}

/** Where the inspector takes the whole page, its end gives the focus back to what opened it. */
export function useReturningFocus(inspecting: boolean): void {
  const opener = useRef<Element | null>(null);
  useEffect(() => {
    if (inspecting) opener.current = document.activeElement;
    else if (opener.current instanceof HTMLElement && opener.current.isConnected) opener.current.focus();
  }, [inspecting]);
}
