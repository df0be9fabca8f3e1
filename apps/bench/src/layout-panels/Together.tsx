import type { Assembly, Service, ShaftAssembly } from '@oddwheel/build/assess/assembly/types';
import { type JSX, memo } from 'react';
import { Panel } from './Panel.tsx';

type Reveal = (address: string) => void;

/** How each shaft goes together, and what comes off to change a part that wears. */
export const TogetherPanel = memo(function TogetherPanel(props: {
  assembly: Assembly;
  onReveal: Reveal;
}): JSX.Element | null {
  const { assembly, onReveal } = props;
  if (assembly.shafts.length === 0 && assembly.services.length === 0) return null;
  return (
    <Panel name="How it goes together">
      <Orders orders={assembly.shafts} lead="" onReveal={onReveal} />
      <h3>To change a part</h3>
      <Orders orders={assembly.services} lead="To change " onReveal={onReveal} />
    </Panel>
  );
});

function Orders(props: { orders: readonly (ShaftAssembly | Service)[]; lead: string; onReveal: Reveal }): JSX.Element {
  return (
    <div className="orders">
      {props.orders.map((order) => (
        <details key={order.address}>
          <summary>
            {props.lead !== '' && <span className="hidden-name">{props.lead}</span>}
            {order.name}
            <span className="lead">
              {order.steps.length > 0
                ? ` ${order.steps.length} ${order.steps.length === 1 ? 'step' : 'steps'}`
                : order.missing.length > 0
                  ? ' not known yet'
                  : ' cannot be done as drawn'}
            </span>
          </summary>
          {order.steps.length > 0 && (
            <ol className="instruction">
              {order.steps.map((step) => (
                <li key={step}>{step}</li>
              ))}
            </ol>
          )}
          {order.missing.map((missing) => (
            <p key={missing.address + missing.says}>
              Missing: {missing.says}.{' '}
              <button type="button" className="link" onClick={() => props.onReveal(missing.address)}>
                Go there<span className="hidden-name">: {missing.says}</span>
              </button>
            </p>
          ))}
        </details>
      ))}
    </div>
  );
}
