import type { JSX } from 'react';
import { Field } from './Field.tsx';
import { Lines } from './Lines.tsx';
import type { PartForm } from './part-form.ts';

interface Props {
  readonly form: PartForm;
  readonly set: (key: keyof PartForm) => (value: string) => void;
  readonly field: (key: keyof PartForm, label: string, note?: string) => JSX.Element;
  readonly wrong: (key: keyof PartForm) => string | undefined;
}

/** What sits at the station that matters, for the limits of run-out and what it does. */
export function Carries({ form, set, field, wrong }: Props): JSX.Element {
  return (
    <>
      <div className="fields">
        <Field
          label="Bearings on its seats"
          value={form.bearings}
          onChange={set('bearings')}
          choices={[
            ['', 'not given'],
            ['deep-groove', 'deep groove ball'],
            ['tapered', 'tapered roller'],
            ['angular-contact', 'angular contact ball'],
          ]}
        />
        {field('sprocketRoot', 'Sprocket, root diameter', 'its face is judged once a face is read')}
        <Field
          label="Sprocket is"
          value={form.sprocketMade}
          onChange={set('sprocketMade')}
          choices={[
            ['turned', 'turned'],
            ['welded', 'welded'],
          ]}
        />
        <Field
          label="Gear"
          value={form.gearKind}
          onChange={set('gearKind')}
          choices={[
            ['', 'none'],
            ['bevel', 'bevel'],
            ['straight', 'spur'],
          ]}
        />
        {form.gearKind !== '' && (
          <>
            {field('gearDiameter', 'Gear, reference diameter')}
            {field('gearModule', 'Gear, module', 'such as 3 mm')}
            {field('gearGrade', 'Gear, tolerance class', '1 to 12; 8 is common')}
          </>
        )}
        {field('balanceMass', 'Mass that turns off centre', 'such as 4 kg')}
        {field('balanceSpeed', 'Top speed of the shaft', 'such as 1800 rpm')}
        {field('balanceGrade', 'Balance grade', '16 mm/s for drive shafts, 6.3 for finer ones')}
        {field('stiffness', 'Stiffness of the mounts', 'such as 200 N/mm')}
      </div>
      <Lines
        label="Other run-out there: name, TIR, angle if known; one a line"
        value={form.others}
        onChange={set('others')}
        wrong={wrong('others')}
        example="bore clearance, 2 thou"
      />
    </>
  );
}
