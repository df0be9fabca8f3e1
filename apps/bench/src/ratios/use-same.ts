import { useRef } from 'react';

/** The value as it was first seen, for as long as its content stays: the worker sends copies, and what is drawn of it shall stand still. */
export function useSame<T>(value: T): T {
  const kept = useRef(value);
  if (kept.current !== value && JSON.stringify(kept.current) !== JSON.stringify(value)) kept.current = value;
  return kept.current;
}
