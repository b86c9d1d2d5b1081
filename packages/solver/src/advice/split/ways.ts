import type { Lock, SidePlan } from '@flitchbook/plan';
import type { BarNode, Layout, Node, UnitClass } from '../../problem.ts';

/** How a bar that may be cut in several manners is cut: in one manner throughout, or not. */
type Style = { readonly manner: string } | 'mixed';

/** A way to break one part: operations down to where it falls into pieces that are cut apart from each other, and how its bars are cut. */
export interface SplitWay {
  /** part, operation; the outermost part first */
  readonly operations: readonly (readonly [part: string, operation: string])[];
  /** null where no bar of it leaves a choice */
  readonly style: Style | null;
  /** cut with the saw wherever there is a choice: the bones stay in */
  readonly boneIn: boolean;
  /** what is chosen, as it would be said over the block */
  readonly says: string;
}

export const wayId = ({ operations, style }: Pick<SplitWay, 'operations' | 'style'>): string =>
  [
    ...operations.map(([, operation]) => operation),
    ...(style === null ? [] : [style === 'mixed' ? 'mixed' : style.manner]),
  ].join('/');

const styleText = (style: Style | null): readonly string[] =>
  style === null ? [] : [style === 'mixed' ? 'mixed by zone' : `${style.manner} throughout`];

/** Zones of a bar that may be cut in more than one manner. */
function openZones({ zones, layouts }: BarNode): readonly number[] {
  return zones.flatMap((_, at) => {
    const manners = new Set(layouts.flatMap(({ ways }) => ways[at]?.map(({ manner }) => manner.id) ?? []));
    return manners.size > 1 ? [at] : [];
  });
}

/** The manner of the zones that leave a choice. */
function styleOf(layout: Layout, open: readonly number[]): Style {
  const manners = new Set(open.flatMap((at) => layout.ways[at]?.map(({ manner }) => manner.id) ?? []));
  const [manner] = manners;
  return manners.size === 1 && manner !== undefined ? { manner } : 'mixed';
}

const sameStyle = (left: Style, right: Style): boolean =>
  left === 'mixed' || right === 'mixed' ? left === right : left.manner === right.manner;

/** What bars can all be cut as; a mix comes last. */
function stylesOf(bars: readonly BarNode[]): readonly (Style | null)[] {
  const [first, ...others] = bars.flatMap((bar) => {
    const open = openZones(bar);
    return open.length === 0 ? [] : [bar.layouts.map((layout) => styleOf(layout, open))];
  });
  if (!first) return [null];
  const everywhere = first.filter(
    (style, at) =>
      first.findIndex((other) => sameStyle(other, style)) === at &&
      others.every((styles) => styles.some((other) => sameStyle(other, style))),
  );
  return everywhere.toSorted((a, b) => Number(a === 'mixed') - Number(b === 'mixed'));
}

/** Every zone that leaves a choice is cut by the saw. */
function isSawn(bar: BarNode, style: Style): boolean {
  const open = openZones(bar);
  return bar.layouts.every(
    (layout) =>
      open.length === 0 ||
      !sameStyle(styleOf(layout, open), style) ||
      open.every((at) => layout.ways[at]?.every(({ manner }) => manner.tool === 'saw')),
  );
}

function waysFrom(nodes: readonly Node[], index: number): readonly SplitWay[] {
  const node = nodes[index];
  if (node?.kind !== 'primal') return [];
  return node.choices.flatMap(({ operation, opens }) => {
    const own = [node.partId, operation.id] as const;
    const said = node.choices.length > 1 ? [operation.name] : [];
    const opened = opens.map((child) => nodes[child] as Node);
    const [only, ...others] = opens;
    if (only !== undefined && others.length === 0 && nodes[only]?.kind === 'primal')
      return waysFrom(nodes, only).map((way) => ({
        ...way,
        operations: [own, ...way.operations],
        says: [...said, way.says].filter((text) => text !== '').join(', '),
      }));
    const bars = opened.filter((each) => each.kind === 'bar');
    return stylesOf(bars).map((style) => ({
      operations: [own],
      style,
      boneIn: style !== null && style !== 'mixed' && bars.every((bar) => isSawn(bar, style)),
      says: [...said, ...styleText(style)].join(', '),
    }));
  });
}

/** Every way to break a part of a side that its facts, its damage and what the day asks for leave open. */
export function splitWays({ nodes }: UnitClass, part: string): readonly SplitWay[] {
  const index = nodes.findIndex((node) => 'partId' in node && node.partId === part);
  return index < 0 ? [] : waysFrom(nodes, index);
}

/** Nodes that a part of the tree can lead to, itself with them. */
function reach(nodes: readonly Node[], index: number, found: Set<number> = new Set()): Set<number> {
  if (found.has(index)) return found;
  found.add(index);
  const node = nodes[index];
  if (node?.kind === 'primal')
    for (const child of node.choices.flatMap(({ opens }) => opens)) reach(nodes, child, found);
  return found;
}

/** The operations above a part that make it, and no others. */
function leadingTo(nodes: readonly Node[], target: number): readonly Node[] {
  return nodes.map((node, index) => {
    if (node.kind !== 'primal' || index === target || !reach(nodes, index).has(target)) return node;
    const choices = node.choices.filter(({ opens }) =>
      opens.some((child) => reach(nodes, child).has(target)),
    );
    return { ...node, choices };
  });
}

function cutAs(node: Node, style: Style): Node {
  if (node.kind !== 'bar') return node;
  const open = openZones(node);
  if (open.length === 0) return node;
  return { ...node, layouts: node.layouts.filter((layout) => sameStyle(styleOf(layout, open), style)) };
}

/** What no choice leads to any more takes no part. */
function pruned(nodes: readonly Node[]): readonly Node[] {
  const reached = reach(nodes, 0);
  return nodes.map((node, index) =>
    reached.has(index) || node.kind === 'singles' ? node : { kind: 'lost', partId: node.partId },
  );
}

/** Nodes that the last operation of a way leads to. */
function openedBy(nodes: readonly Node[], { operations }: SplitWay): readonly number[] {
  const [part, last] = operations.at(-1) ?? [];
  return nodes.flatMap((node) =>
    node.kind === 'primal' && node.partId === part
      ? node.choices.flatMap(({ operation, opens }) => (operation.id === last ? opens : []))
      : [],
  );
}

/** A zone of a planned bar, its stretches in order: "bone-in 0-5". */
const stretchText = (manner: string, from: number, to: number): string => `${manner} ${from}-${to}`;

/** The one layout of a bar that a side was planned with; all of them where the bar is not on it. */
function asPlanned(node: BarNode, side: SidePlan): BarNode {
  const planned = side.bars.find(({ bar }) => bar === node.partId);
  const stretches = planned?.runs.flatMap((run) => run.stretches) ?? [];
  const layouts = node.layouts.filter(({ ways }) =>
    ways.every((way, at) => {
      const mine = stretches.filter(({ zone }) => zone === node.zones[at]);
      const [was, is] = [
        mine.map(({ manner, fromStation, toStation }) => stretchText(manner, fromStation, toStation)),
        way.map(({ manner, fromStation, toStation }) => stretchText(manner.id, fromStation, toStation)),
      ];
      return was.toSorted().join() === is.toSorted().join();
    }),
  );
  return layouts.length === 0 ? node : { ...node, layouts };
}

/** The class with every choice beside the part as a side was planned; its pieces may still be dealt anew. */
export function heldBeside(group: UnitClass, part: string, side: SidePlan): UnitClass {
  const target = group.nodes.findIndex((node) => 'partId' in node && node.partId === part);
  const inside = reach(group.nodes, target);
  const nodes = leadingTo(group.nodes, target).map((node, index): Node => {
    if (inside.has(index)) return node;
    if (node.kind === 'bar') return asPlanned(node, side);
    if (node.kind !== 'primal') return node;
    const chosen = node.choices.filter(({ operation }) => operation.id === side.operations[node.partId]);
    return chosen.length === 0 ? node : { ...node, choices: chosen };
  });
  return { ...group, nodes };
}

/** The class with one way to break the part left in it, and everything else as open as it was. */
export function restrictedTo(group: UnitClass, part: string, way: SplitWay): UnitClass {
  const target = group.nodes.findIndex((node) => 'partId' in node && node.partId === part);
  const settled = new Map(way.operations);
  const nodes = leadingTo(group.nodes, target).map((node): Node => {
    const operation = node.kind === 'primal' ? settled.get(node.partId) : undefined;
    if (node.kind !== 'primal' || operation === undefined) return node;
    return { ...node, choices: node.choices.filter((choice) => choice.operation.id === operation) };
  });
  const opened = openedBy(nodes, way);
  const { style } = way;
  const styled =
    style === null ? nodes : nodes.map((node, index) => (opened.includes(index) ? cutAs(node, style) : node));
  return { ...group, nodes: pruned(styled) };
}

/** Manners of each zone of a bar as it was planned. */
function mannersIn(side: SidePlan, bar: string): ReadonlyMap<string, readonly string[]> {
  const found = new Map<string, string[]>();
  const runs = side.bars.filter((planned) => planned.bar === bar).flatMap((planned) => planned.runs);
  for (const { zone, manner } of runs.flatMap((run) => run.stretches))
    found.set(zone, [...(found.get(zone) ?? []), manner]);
  return found;
}

/** Whether a planned side is broken in this way. */
export function follows({ nodes }: UnitClass, way: SplitWay, side: SidePlan): boolean {
  if (way.operations.some(([part, operation]) => side.operations[part] !== operation)) return false;
  return openedBy(nodes, way).every((index) => {
    const node = nodes[index];
    const { style } = way;
    if (node?.kind !== 'bar' || style === null) return true;
    const manners = mannersIn(side, node.partId);
    const chosen = new Set(openZones(node).flatMap((at) => manners.get(node.zones[at] ?? '') ?? []));
    if (chosen.size === 0) return true;
    return style === 'mixed' ? chosen.size > 1 : chosen.size === 1 && chosen.has(style.manner);
  });
}

/** The choices of a way as they would be settled on this side. A zone that is parted between two manners can't be. */
export function locksOf({ nodes }: UnitClass, way: SplitWay, side: SidePlan): readonly Lock[] {
  const { sideId } = side;
  const zones = openedBy(nodes, way).flatMap((index) => {
    const node = nodes[index];
    return node?.kind === 'bar' ? [...mannersIn(side, node.partId)] : [];
  });
  return [
    ...way.operations.map(([part, operation]): Lock => ({ lock: 'operation', sideId, part, operation })),
    ...zones.flatMap(([zone, [manner, ...others]]): Lock[] =>
      manner === undefined || others.length > 0 ? [] : [{ lock: 'manner', sideId, zone, manner }],
    ),
  ];
}

/** The part, of those that the side is broken into first, that leaves the most ways. */
export function widestPart(group: UnitClass): string | undefined {
  const root = group.nodes[0];
  if (root?.kind !== 'primal') return undefined;
  const parts = root.choices
    .flatMap(({ opens }) => opens)
    .flatMap((index) => {
      const node = group.nodes[index];
      return node?.kind === 'primal' ? [node.partId] : [];
    });
  const [widest] = [...new Set(parts)]
    .map((part) => ({ part, ways: splitWays(group, part).length }))
    .toSorted((a, b) => b.ways - a.ways);
  return widest?.part;
}
