import { open, readdir, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { NodeFS } from '@electric-sql/pglite/nodefs';

const segment = /^[0-9A-F]{24}$/;

/**
 * Node's file system for the embedded engine, which by itself never asks the disk to keep anything: here each commit
 * waits until its log is on the disk. Data files are not covered, so a power cut after a checkpoint can still cost data.
 */
export class SyncedNodeFS extends NodeFS {
  readonly #log: string;
  readonly #known = new Set<string>();
  #newestMs = 0;
  /** syncs asked of the disk so far */
  syncs = 0;
  /** while only reading there is nothing to keep */
  reading = false;

  constructor(folder: string) {
    super(folder);
    this.#log = join(this.rootDir, 'pg_wal');
  }

  override async syncToFs(): Promise<void> {
    if (this.reading) return;
    const names = await this.#segments();
    if (names.length === 0) return;
    const ages = await Promise.all(
      names.map(async (name) => ({ name, changedMs: (await stat(join(this.#log, name))).mtimeMs })),
    );
    const newestMs = Math.max(...ages.map(({ changedMs }) => changedMs));
    // A commit may have begun in the file that was the newest one last time.
    const written = ages.filter(({ changedMs }) => changedMs >= Math.min(this.#newestMs, newestMs));
    for (const { name } of this.#newestMs === 0 ? ages : written) await sync(join(this.#log, name));
    this.#newestMs = newestMs;
    this.syncs += 1;
    await this.#keepNames(names);
  }

  async #segments(): Promise<readonly string[]> {
    try {
      return (await readdir(this.#log)).filter((name) => segment.test(name));
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code === 'ENOENT') return []; // not made yet
      throw error;
    }
  }

  /** A new file is lost with its name unless the folder is kept too. */
  async #keepNames(names: readonly string[]): Promise<void> {
    const fresh = names.filter((name) => !this.#known.has(name));
    if (fresh.length === 0) return;
    for (const name of fresh) this.#known.add(name);
    if (process.platform !== 'win32') await sync(this.#log, 'r');
  }
}

async function sync(path: string, flags = 'r+'): Promise<void> {
  const file = await open(path, flags);
  try {
    await file.datasync();
  } finally {
    await file.close();
  }
}
