import type { JSX } from 'react';

/** What an edit changes besides what it is for, told before it is made. */
export function Also({ also }: { readonly also: readonly string[] }): JSX.Element {
  return (
    <div className="also" role="status">
      <p>This changes too:</p>
      <ul>
        {also.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
    </div>
  );
}
