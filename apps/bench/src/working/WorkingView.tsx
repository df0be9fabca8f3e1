import type { Finding } from '@oddwheel/build/assess/types';
import type { Explanation } from '@oddwheel/build/session-types';
import type { JSX } from 'react';

export function WorkingView(_: {
  finding: Finding;
  explanation: Explanation | null;
  onReveal: (a: string) => void;
}): JSX.Element {
  return <div className="working" />;
}
