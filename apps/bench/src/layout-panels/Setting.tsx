import type { Adjustment, Setting } from '@oddwheel/build/assess/adjusters/types';
import { type JSX, memo } from 'react';
import { Panel } from './Panel.tsx';
import { inWords } from './words.ts';

/** What has to be set, in the order that leaves set what is set, and what each adjuster upsets meanwhile. */
export const SettingPanel = memo(function SettingPanel(props: {
  adjustment: Adjustment;
  onReveal: (address: string) => void;
}): JSX.Element | null {
  const { adjustment, onReveal } = props;
  const { settings, order, disturbances, rings } = adjustment;
  if (settings.length === 0) return null;
  const unset = settings.filter((setting) => setting.required && setting.adjusters.length === 0);
  const byKey = new Map(settings.map((setting) => [setting.key, setting]));
  return (
    <Panel name="What has to be set">
      <p className="lead">
        {order.length === 0
          ? 'The build names no adjuster yet.'
          : 'In this order: an adjuster that upsets something comes before the one that sets it.'}
      </p>
      {order.length > 0 && (
        <ol className="numbered">
          {order.map((step) => {
            const setting = byKey.get(step.setting);
            return (
              <li key={`${step.adjuster} ${step.setting}`}>
                {step.text}{' '}
                <button type="button" className="link" onClick={() => onReveal(step.adjuster)}>
                  Adjuster<span className="hidden-name"> that sets the {setting?.name}</span>
                </button>
                {disturbances
                  .filter((one) => one.adjuster === step.adjuster)
                  .map((one) => (
                    <span key={one.setting} className="note upset">
                      Upsets the {byKey.get(one.setting)?.name ?? 'other setting'}: {one.text}
                    </span>
                  ))}
              </li>
            );
          })}
        </ol>
      )}
      {rings.map((ring) => (
        <p key={ring.join(' ')} className="upset">
          {ringWords(ring, settings)}
        </p>
      ))}
      {unset.length > 0 && (
        <>
          <h3>Nothing sets these yet</h3>
          <ul className="plain-list">
            {unset.map((setting) => (
              <li key={setting.key}>
                <button type="button" className="link" onClick={() => onReveal(setting.address)}>
                  {capital(setting.name)}
                </button>
                <button type="button" className="link" onClick={() => onReveal('/path/adjusters')}>
                  Adjusters<span className="hidden-name">, to set the {setting.name}</span>
                </button>
              </li>
            ))}
          </ul>
        </>
      )}
    </Panel>
  );
});

function ringWords(ring: readonly string[], settings: readonly Setting[]): string {
  const names = settings.filter((one) => one.adjusters.some((adjuster) => ring.includes(adjuster))).map((x) => x.name);
  return `${capital(inWords(names))} upset each other: set them in turn until none of them moves any more.`;
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
