/**
 * Orders things so that each comes before those it upsets, keeping the given order where nothing asks for another.
 * @param count number of things
 * @param upsets whether thing `a` upsets thing `b`
 * @returns `order`, indices; `rings`, the groups that upset each other in a circle, each as one shortest walk round
 */
export function orderOf(
  count: number,
  upsets: (a: number, b: number) => boolean,
): { readonly order: readonly number[]; readonly rings: readonly (readonly number[])[] } {
  const all = Array.from({ length: count }, (_, k) => k);
  const next = all.map((a) => all.filter((b) => b !== a && upsets(a, b)));
  const reach = all.map((a) => reached(next, a));
  const together = (a: number, b: number): boolean =>
    a === b || (reach[a]?.has(b) === true && reach[b]?.has(a) === true);
  const groups: number[][] = [];
  for (const a of all) {
    const group = groups.find(([first]) => first !== undefined && together(first, a));
    if (group) group.push(a);
    else groups.push([a]);
  }
  const left = [...groups];
  const order: number[] = [];
  while (left.length > 0) {
    // Groups have no circle among them, so one is always free.
    const free = left.findIndex((group) =>
      left.every((other) => other === group || !other.some((a) => group.some((b) => next[a]?.includes(b)))),
    );
    order.push(...(left.splice(free, 1)[0] ?? []));
  }
  return { order, rings: groups.filter((group) => group.length > 1).map((group) => ring(next, group)) };
}

/** Everything that can be reached from `start` in one step or more. */
function reached(next: readonly (readonly number[])[], start: number): Set<number> {
  const found = new Set<number>();
  const open = [...(next[start] ?? [])];
  for (let a = open.pop(); a !== undefined; a = open.pop())
    if (!found.has(a)) {
      found.add(a);
      open.push(...(next[a] ?? []));
    }
  return found;
}

/** Shortest way from the first of a group back to it. */
function ring(next: readonly (readonly number[])[], group: readonly number[]): readonly number[] {
  const start = group[0] ?? 0;
  let ways: number[][] = [[start]];
  const seen = new Set<number>();
  for (;;) {
    const longer: number[][] = [];
    for (const way of ways)
      for (const b of next[way.at(-1) ?? start] ?? []) {
        if (b === start) return way;
        if (group.includes(b) && !seen.has(b)) {
          seen.add(b);
          longer.push([...way, b]);
        }
      }
    ways = longer;
  }
}
