import { addDays, daysFromTo, isDate } from '../dates.ts';
import { FaultList, type KitchenFault } from '../faults.ts';

/** A tank, a smoker, a freezer: how much it holds at once. */
export interface Room {
  readonly roomId: string;
  readonly name: string;
  readonly holdsMg: number;
}

/** Pieces that must be ready for a day: holiday hams for a feast. */
export interface ReadyJob {
  readonly jobId: string;
  readonly name: string;
  readonly pieces: number;
  readonly pieceMg: number;
  readonly readyBy: string;
  /** the day the pieces are cut */
  readonly cutOn: string;
  /** days that a finished piece may wait for its day */
  readonly keepsReadyDays: number;
  /** in order; a step without a room takes time only */
  readonly steps: readonly { readonly what: string; readonly roomId: string | null; readonly days: number }[];
  /** where pieces wait that are not started while they keep fresh; and for how many days they do */
  readonly waitsIn: string;
  readonly keepsFreshDays: number;
}

/** Pieces of one job that start on one day. */
export interface Wave {
  readonly jobId: string;
  readonly pieces: number;
  readonly start: string;
  readonly ready: string;
  readonly steps: readonly {
    readonly what: string;
    readonly from: string;
    readonly until: string;
    readonly roomId: string | null;
  }[];
  /** they wait in the cold until they start: a lot of their own */
  readonly frozenFrom: string | null;
}

export interface ReadyPlan {
  readonly waves: readonly Wave[];
  readonly late: readonly { readonly jobId: string; readonly pieces: number; readonly says: string }[];
}

interface Stay {
  readonly roomId: string;
  readonly from: string;
  readonly until: string;
}

/** What lies where on each day. A piece takes its place from the day it comes to the day before it goes. */
class Rooms {
  private readonly taken = new Map<string, number>();
  private readonly rooms: readonly Room[];

  constructor(rooms: readonly Room[]) {
    this.rooms = rooms;
  }

  private *days({ roomId, from, until }: Stay): Generator<string> {
    for (let day = from; day < until; day = addDays(day, 1)) yield `${roomId}/${day}`;
  }

  /** Pieces that fit on every day of every stay, and the room that lets in fewest. */
  fit(stays: readonly Stay[], pieceMg: number): { readonly pieces: number; readonly room: Room | null } {
    let least: { pieces: number; room: Room | null } = { pieces: Number.POSITIVE_INFINITY, room: null };
    for (const stay of stays) {
      const room = this.rooms.find(({ roomId }) => roomId === stay.roomId);
      for (const day of this.days(stay)) {
        const pieces = Math.floor(((room?.holdsMg ?? 0) - (this.taken.get(day) ?? 0)) / pieceMg);
        if (pieces < least.pieces) least = { pieces: Math.max(0, pieces), room: room ?? null };
      }
    }
    return least;
  }

  take(stays: readonly Stay[], massMg: number): void {
    for (const day of stays.flatMap((stay) => [...this.days(stay)]))
      this.taken.set(day, (this.taken.get(day) ?? 0) + massMg);
  }
}

const daysOf = ({ steps }: ReadyJob): number => steps.reduce((sum, { days }) => sum + days, 0);

function waveOf(job: ReadyJob, start: string, pieces: number): Wave {
  let from = start;
  const steps = job.steps.map(({ what, roomId, days }) => {
    const until = addDays(from, days);
    const step = { what, from, until, roomId };
    from = until;
    return step;
  });
  const freshUntil = addDays(job.cutOn, job.keepsFreshDays);
  return {
    jobId: job.jobId,
    pieces,
    start,
    ready: from,
    steps,
    frozenFrom: start > freshUntil ? job.cutOn : null,
  };
}

function staysOf(job: ReadyJob, wave: Wave): Stay[] {
  const stays = wave.steps.flatMap(({ roomId, from, until }) =>
    roomId === null ? [] : [{ roomId, from, until }],
  );
  return wave.frozenFrom === null
    ? stays
    : [...stays, { roomId: job.waitsIn, from: wave.frozenFrom, until: wave.start }];
}

/** As many as fit at the latest start, the rest a day earlier, and so on back to the day they are cut. */
function place(
  job: ReadyJob,
  rooms: Rooms,
  plan: { waves: Wave[]; late: ReadyPlan['late'][number][] },
): void {
  let left = job.pieces;
  const full = new Set<string>();
  const latest = addDays(job.readyBy, -daysOf(job));
  const tooEarly = addDays(latest, -job.keepsReadyDays);
  for (let start = latest; left > 0 && start >= tooEarly; start = addDays(start, -1)) {
    if (start < job.cutOn) break;
    const stays = staysOf(job, waveOf(job, start, 0));
    const { pieces, room } = rooms.fit(stays, job.pieceMg);
    const started = Math.min(left, pieces);
    if (started < left && room) full.add(room.name);
    if (started === 0) continue;
    rooms.take(stays, started * job.pieceMg);
    plan.waves.push(waveOf(job, start, started));
    left -= started;
  }
  if (left === 0) return;
  const lacks = `${left} of ${job.pieces} can’t be ready by ${job.readyBy}`;
  const says =
    full.size > 0
      ? `${lacks}. No room: ${[...full].join(', ')}.`
      : `${lacks}: they would have to start on ${latest}, and are cut on ${job.cutOn}.`;
  plan.late.push({ jobId: job.jobId, pieces: left, says });
}

function check(rooms: readonly Room[], jobs: readonly ReadyJob[]): KitchenFault[] {
  const list = new FaultList();
  for (const [index, { holdsMg, roomId }] of rooms.entries()) {
    list.whole(`rooms[${index}].holdsMg`, holdsMg, 0, 1_000_000_000_000);
    list.need(
      rooms.findIndex((room) => room.roomId === roomId) === index,
      `rooms[${index}].roomId`,
      roomId,
      'stands there twice',
    );
  }
  for (const [index, job] of jobs.entries()) {
    const at = `jobs[${index}]`;
    list.whole(`${at}.pieces`, job.pieces, 1, 100_000);
    list.whole(`${at}.pieceMg`, job.pieceMg, 1, 1_000_000_000);
    list.whole(`${at}.keepsFreshDays`, job.keepsFreshDays, 0, 60);
    list.whole(`${at}.keepsReadyDays`, job.keepsReadyDays, 0, 800);
    for (const field of ['readyBy', 'cutOn'] as const)
      list.need(isDate(job[field]), `${at}.${field}`, job[field], 'must be a day that exists, as yyyy-mm-dd');
    for (const [step, { days, roomId }] of job.steps.entries()) {
      list.whole(`${at}.steps[${step}].days`, days, 0, 1000);
      list.need(
        roomId === null || rooms.some((room) => room.roomId === roomId),
        `${at}.steps[${step}].roomId`,
        roomId,
        'is no room here',
      );
    }
    list.need(
      rooms.some(({ roomId }) => roomId === job.waitsIn),
      `${at}.waitsIn`,
      job.waitsIn,
      'is no room here',
    );
    if (isDate(job.readyBy) && isDate(job.cutOn))
      list.need(
        Math.abs(daysFromTo(job.cutOn, job.readyBy)) <= 800,
        `${at}.readyBy`,
        job.readyBy,
        'must be within two years of the day it is cut',
      );
  }
  return list.faults;
}

/**
 * From the day something must be ready back to the day it must start, within what tanks, smoker and freezer hold. What is
 * due last is placed first, each as late as it can be.
 */
export function planBack(
  rooms: readonly Room[],
  jobs: readonly ReadyJob[],
): ReadyPlan | { readonly faults: readonly KitchenFault[] } {
  const faults = check(rooms, jobs);
  if (faults.length > 0) return { faults };
  const held = new Rooms(rooms);
  const plan: { waves: Wave[]; late: ReadyPlan['late'][number][] } = { waves: [], late: [] };
  const due = jobs.map((job, order) => ({ job, order }));
  due.sort((a, b) =>
    a.job.readyBy < b.job.readyBy ? 1 : a.job.readyBy > b.job.readyBy ? -1 : a.order - b.order,
  );
  for (const { job } of due) place(job, held, plan);
  return {
    waves: plan.waves.sort((a, b) => (a.start < b.start ? -1 : Number(a.start > b.start))),
    late: plan.late,
  };
}
