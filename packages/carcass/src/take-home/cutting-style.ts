import type { SourceKey } from '../species.ts';

/** How a customer's side is usually broken down and what goes into the boxes. */
export interface CuttingStyle {
  readonly id: string;
  readonly name: string;
  readonly says: string;
  /** part id to operation id; a part not named is broken down the usual way, its first */
  readonly operations: Readonly<Record<string, string>>;
  /** zone id to manner id; a zone not named is cut in its first manner */
  readonly manners: Readonly<Record<string, string>>;
  /** items and bulk that stay behind */
  readonly declines: readonly string[];
}

export interface ServingsFigure {
  /** items, stocks and bulk it is for */
  readonly ids: readonly string[];
  readonly fewestPerPound: number;
  readonly mostPerPound: number;
  readonly source: SourceKey;
}

/** How much packed meat a freezer holds. */
interface FreezerFigure {
  readonly loosestPoundsPerCubicFoot: number;
  readonly tightestPoundsPerCubicFoot: number;
  readonly source: SourceKey;
}

/** What a species' customers take home. */
export interface TakeHomeProfile {
  readonly speciesId: string;
  readonly styles: readonly CuttingStyle[];
  readonly servings: readonly ServingsFigure[];
  readonly freezer: FreezerFigure;
  /** a cool box as people bring one, for the way home */
  readonly coolBox: { readonly litres: number; readonly source: SourceKey };
  /** what nobody can take home: shrink, saw dust, what was condemned */
  readonly lost: readonly string[];
}
