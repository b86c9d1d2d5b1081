import type { CutList, CutStep, FillReport, Proof, SideCutList } from '@flitchbook/plan';
import { rule, wrap } from './lines.ts';

/** Pieces that are alike stand on one line: how many, of what size, for whom. */
function pieceLines(step: CutStep): string[] {
  const groups = new Map<string, number>();
  for (const { name, size, owner } of step.pieces) {
    const key = `${name}, ${size} → ${owner ?? 'the counter'}`;
    groups.set(key, (groups.get(key) ?? 0) + 1);
  }
  return [...groups].map(([key, count]) => wrap(`${count} × ${key}`, '       '));
}

function stepText(step: CutStep): string {
  const head = wrap(`${String(step.order).padStart(2)}. ${step.action}`, '  ');
  const detail = step.detail === '' ? [] : [wrap(step.detail, '      ')];
  const to = step.to === '' ? [] : [wrap(`to: ${step.to}`, '      ')];
  return [head, ...detail, ...pieceLines(step), ...to].join('\n');
}

function sideText(name: string, side: SideCutList): string {
  const whose = side.sharedBy === null ? '' : `, all of it for ${side.sharedBy}`;
  const head = `${name}, ${side.hand} side: ${(side.massMg / 1_000_000).toFixed(2)} kg, about ${Math.round(side.minutes)} minutes${whose}`;
  return [head, ...side.steps.map(stepText)].join('\n');
}

function proofText(proof: Proof | null): string {
  if (!proof) return '';
  if (proof.status === 'optimal') return 'No plan of this day fills more: proven.';
  return `No plan of this day is worth more than ${(proof.gap * 100).toFixed(2)} % above this one on any goal: proven. Stopped ${proof.status === 'within-gap' ? 'near enough' : 'at the deadline'}.`;
}

/** Cut list and fill report for people, 80 columns wide. */
export function reportText(list: CutList, report: FillReport, proof: Proof | null): string {
  const sides = list.animals.flatMap((animal) => [
    ...animal.sides.map((side) => sideText(animal.name, side)),
    ...(animal.singles ? [`${animal.name}, pieces of the animal\n${stepText(animal.singles)}`] : []),
  ]);
  const lines = report.lines.map(({ owner, what, says, short }) =>
    wrap(`${short > 0 ? 'SHORT ' : 'filled'} ${owner}: ${what}. ${says}`, '  '),
  );
  const shares = report.shares.map(({ owner, size, says, sideIds }) =>
    wrap(`${sideIds.length === 0 ? 'SHORT ' : 'filled'} ${owner}: ${size} hog. ${says}`, '  '),
  );
  const bulk = report.bulk.map(
    ({ name, pooledGrams, freeGrams }) =>
      `  ${name}: ${(pooledGrams / 1000).toFixed(2)} kg, ${(freeGrams / 1000).toFixed(2)} kg not asked for`,
  );
  return [
    `Cut list for ${list.date}`,
    rule,
    sides.join(`\n${rule}\n`),
    rule,
    'Who is filled',
    ...lines,
    ...shares,
    rule,
    'Trim by kind',
    ...bulk,
    rule,
    proofText(proof),
  ].join('\n');
}
