/** The candidate that is spelled most like `name`, or '' when none is near. */
export function nearest(name: string, candidates: readonly string[]): string {
  if (name.length > 60) return '';
  let best = '';
  let least = Math.max(2, Math.ceil(name.length / 3)) + 1;
  for (const candidate of candidates) {
    const alike = editDistance(name.toLowerCase(), candidate.toLowerCase());
    // Of two that differ from the name in capitals only, such as MHz and mHz for MHZ, the one with more of them right.
    const distance = alike === 0 ? editDistance(name, candidate) / 100 : alike;
    if (distance < least) {
      best = candidate;
      least = distance;
    }
  }
  return best;
}

/** Number of single letters to insert, delete, change or swap with their neighbour [1] (optimal string alignment). */
function editDistance(a: string, b: string): number {
  let before: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const change = a[i - 1] === b[j - 1] ? 0 : 1;
      row[j] = Math.min(last[j] + 1, row[j - 1] + 1, last[j - 1] + change);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1])
        row[j] = Math.min(row[j], before[j - 2] + 1);
    }
    before = last;
    last = row;
  }
  return last[b.length];
}
