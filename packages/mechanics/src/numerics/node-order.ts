/**
 * An order of nodes that keeps neighbours close together: from an end of each connected part outward by distance, then turned round.
 * `order[k]` is the node that stands at place k.
 *
 * Source: E. Cuthill, J. McKee (1969), with the reversal of A. George (1971); from memory.
 *
 * @param count number of nodes
 * @param links pairs of nodes that share a member or spring
 */
export function nodeOrder(count: number, links: readonly (readonly [number, number])[]): Int32Array {
  const sets = Array.from({ length: count }, () => new Set<number>());
  for (const [a, b] of links)
    if (a !== b) {
      sets[a]?.add(b);
      sets[b]?.add(a);
    }
  const neighbours = sets.map((set) => [...set].sort((a, b) => a - b));
  const degree = (node: number): number => neighbours[node]?.length ?? 0;
  const placed = new Uint8Array(count);
  const order: number[] = [];

  /** Nodes level by level from a start; the last one is as far away as any. */
  const spread = (start: number): number[] => {
    const seen = new Set([start]);
    const reached = [start];
    for (let at = 0; at < reached.length; at++)
      for (const next of [...(neighbours[reached[at] as number] ?? [])].sort((a, b) => degree(a) - degree(b) || a - b))
        if (!seen.has(next)) {
          seen.add(next);
          reached.push(next);
        }
    return reached;
  };

  for (let node = 0; node < count; node++) {
    if (placed[node]) continue;
    // Two sweeps find a node at the far end of this part.
    const far = spread(spread(node).at(-1) ?? node).at(-1) ?? node;
    for (const one of spread(far)) {
      placed[one] = 1;
      order.push(one);
    }
  }
  return Int32Array.from(order.reverse());
}
