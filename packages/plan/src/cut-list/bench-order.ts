/**
 * The order of the bench, part by part, where a species has one that its tree alone does not tell. Common practice, no
 * source: leaf fat first and kept apart from the hard fat of the loin, then kidney and skirt, then the tenderloin, then the
 * line of loin and belly, then the ribs, and only then portions; the middle while the side is cold, shoulder and leg after it.
 * Parts not named here come after those named, in the order of the tree.
 */
const benchOrder: Readonly<Record<string, readonly string[]>> = {
  hog: [
    'side',
    'middle',
    'middle-open',
    'middle-fillet-out',
    'middle-fillet-in',
    'belly-ribbed',
    'belly-front',
    'loin-out',
    'loin-in',
    'loin-long-out',
    'loin-long-in',
    'loin-front',
    'loin-rear',
    'belly-slab',
    'belly-boneless',
    'belly-rib-in',
    'belly-short',
    'belly-rear',
    'shoulder',
    'butt',
    'butt-bone-in',
    'butt-boneless',
    'picnic',
    'picnic-boneless',
    'leg',
    'ham',
    'ham-centre',
  ],
};

/** What to mind about a kind of bulk when it is gathered. Common practice, no source. */
const bulkNotes: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  hog: {
    'leaf-fat': 'Keep it apart from the hard back fat: it is the best for rendering.',
    'back-fat': 'Keep it apart from the leaf fat.',
    cartilage: 'In one piece, for stock or rillettes.',
  },
};

/** Parts of one side in bench order. */
export function inBenchOrder(speciesId: string, parts: readonly string[]): string[] {
  const order = Object.hasOwn(benchOrder, speciesId) ? (benchOrder[speciesId] ?? []) : [];
  const named = order.filter((part) => parts.includes(part));
  return [...named, ...parts.filter((part) => !order.includes(part))];
}

export const bulkNote = (speciesId: string, bulk: string): string => bulkNotes[speciesId]?.[bulk] ?? '';
