import { describe, expect, it } from 'vitest';
import { findPlaces, type Place } from './places.ts';

const places: readonly Place[] = [
  { name: 'Chain 1', kind: 'part of the build', to: { element: '/path/stages/chain-1' } },
  { name: 'Shaft A', kind: 'part of the build', to: { element: '/path/shafts/shaft-a' } },
  { name: 'Driver teeth', kind: 'field of Chain 1', to: { field: '/path/stages/chain-1/teeth/driver' } },
  { name: 'Links', kind: 'field of Chain 1', to: { field: '/path/stages/chain-1/links' } },
  { name: 'Slack of chain 1', kind: 'check, thin', to: { finding: 'chain.slack:/path/stages/chain-1' } },
];
const found = (typed: string) => findPlaces(places, typed).map((place) => place.name);

describe('finding by name', () => {
  it('puts what begins with the word before what has it in its name, and that before what only belongs to it', () => {
    expect(found('chain')).toEqual(['Chain 1', 'Slack of chain 1', 'Driver teeth', 'Links']);
  });

  it('wants every word, in any order and case', () => {
    expect(found('1 LINKS chain')).toEqual(['Links']);
    expect(found('teeth shaft')).toEqual([]);
  });

  it('finds nothing before anything is typed', () => {
    expect(found('  ')).toEqual([]);
  });
});
