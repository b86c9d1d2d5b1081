import type { DayFault } from '@flitchbook/plan';
import { sentence, valueAt } from '../field-path.ts';
import type { FileFault } from '../json-file.ts';

/** Names of fields in the day against their names in the file, after the place they stand in. */
const renamed: readonly (readonly [RegExp, string])[] = [
  [/\.portion\.um$/, '.thickness'],
  [/\.portion\.ribs$/, '.ribs'],
  [/\.portion\.(fromGrams|toGrams)$/, '.weight'],
  [/\.portion(\.by)?$/, ''],
  [/\.ask\.pieces$/, '.count'],
  [/\.ask\.grams$/, '.amount'],
  [/\.ask$/, ''],
  [/^(\.instructions(?:\.right)?\.portions\..+)\.um$/, '$1.thickness'],
  [/^(\.instructions(?:\.right)?\.portions\..+)\.(fromGrams|toGrams)$/, '$1.weight'],
  [/^(\.instructions(?:\.right)?\.portions\..+)\.by$/, '$1'],
  [/\.priceMinorPerKg$/, '.price'],
  [/\.speciesId$/, '.species'],
  [/\.(orderId|lineId|shareId|animalId|sideId)$/, '.id'],
  [/\.massMg$/, '.weight'],
  [/\.worthPercent$/, '.percent'],
  [/^\.worthMinorPerKg\./, '.worth.'],
  [/^\.labourMinorPerHour$/, '.labourPerHour'],
  [/^\.kerfUm$/, '.kerfMm'],
  [/^(\.stockSteps\[\d+\])\.grams$/, '$1.amount'],
];

/** Facts of the animal that a file says once and the day says of each side. */
const ofAnimal: readonly (readonly [RegExp, string])[] = [
  [/^\.sides\[\d+\]\.carcassGrams$/, '.hanging'],
  [/^\.sides\[\d+\]\.(ribs|facts(\[\d+\])?)$/, '.$1'],
];

const pathsInText = /\b(?:animals|lines|shares|locks)\[\d+\](?:\.[a-zA-Z]+|\[\d+\])*/g;

/** Collects what is wrong with a day file and says where in the file it stands. */
export class DayFileNotes {
  readonly faults: FileFault[] = [];
  readonly warnings: FileFault[] = [];
  readonly #file: unknown;
  readonly #places = new Map<string, string>();

  /** @param file the file's value as it was read */
  constructor(file: unknown) {
    this.#file = file;
  }

  error(at: string, says: string): void {
    this.faults.push({ at, value: valueAt(this.#file, at), says: sentence(says) });
  }

  warn(at: string, says: string): void {
    this.warnings.push({ at, value: valueAt(this.#file, at), says: sentence(says) });
  }

  /** Says where an entry of the day ("lines[3]") stands in the file ("orders[1].lines[0]"). */
  place(inDay: string, inFile: string): void {
    this.#places.set(inDay, inFile);
  }

  /** A path of the day as the file has it. */
  pathInFile(at: string): string {
    for (const [form, name] of ofAnimal) {
      const [animal = ''] = /^animals\[\d+\]/.exec(at) ?? [];
      if (animal !== '' && form.test(at.slice(animal.length)))
        return at.slice(0, animal.length) + at.slice(animal.length).replace(form, name);
    }
    for (
      let end = at.length;
      end > 0;
      end = Math.max(at.lastIndexOf('.', end - 1), at.lastIndexOf('[', end - 1))
    ) {
      const place = this.#places.get(at.slice(0, end));
      if (place !== undefined) return place + this.#rename(at.slice(end));
    }
    if (at === 'dayId') return 'id';
    const [top = ''] = /^[^.[]+/.exec(at) ?? [];
    return top + this.#rename(at.slice(top.length));
  }

  #rename(rest: string): string {
    const [form, name] = renamed.find(([pattern]) => pattern.test(rest)) ?? [];
    return form === undefined || name === undefined ? rest : rest.replace(form, name);
  }

  /** Adds what the check of the day found, unless the same field has been spoken of already. */
  addChecked(found: readonly DayFault[]): void {
    const spoken = this.faults.map(({ at }) => at);
    const under = (at: string): boolean =>
      spoken.some((before) => at === before || at.startsWith(`${before}.`) || at.startsWith(`${before}[`));
    for (const { at, value, says, level } of found) {
      const inFile = this.pathInFile(at);
      if (under(inFile)) continue;
      const written = valueAt(this.#file, inFile);
      const text = says.replace(pathsInText, (path) => this.pathInFile(path));
      const list = level === 'error' ? this.faults : this.warnings;
      if (list.some((known) => known.at === inFile && known.says === text)) continue;
      list.push({ at: inFile, value: written === undefined ? value : written, says: text });
    }
  }
}
