import { setTimeout as sleep } from 'node:timers/promises';
import { describe, expect, it } from 'vitest';
import { Deadline } from './deadline.ts';
import { Gate } from './gate.ts';

const long = () => new Deadline(10_000);

async function entered(gate: Gate, deadline: Deadline): Promise<void> {
  await gate.enter(deadline);
  deadline.clear();
}

describe('a gate', () => {
  it('lets in no more than its size, first come first served', async () => {
    const gate = new Gate(2);
    const order: number[] = [];
    await entered(gate, long());
    await entered(gate, long());
    const waiting = [1, 2, 3].map((nth) => entered(gate, long()).then(() => order.push(nth)));
    await sleep(5);
    expect(order).toEqual([]);
    gate.leave();
    gate.leave();
    await sleep(5);
    expect(order).toEqual([1, 2]);
    gate.leave();
    await Promise.all(waiting);
    expect(order).toEqual([1, 2, 3]);
  });

  it('turns away who has waited too long, and keeps no place for them', async () => {
    const gate = new Gate(1);
    await entered(gate, long());
    const late = gate.enter(new Deadline(10));
    await expect(late).rejects.toMatchObject({
      name: 'DatabaseUnavailable',
      reason: 'deadline',
      maybeDone: false,
    });
    gate.leave();
    await entered(gate, long());
    gate.leave();
    await gate.idle();
  });

  it('says when nobody is inside', async () => {
    const gate = new Gate(1);
    await entered(gate, long());
    let idle = false;
    const waiting = gate.idle().then(() => {
      idle = true;
    });
    await sleep(5);
    expect(idle).toBe(false);
    gate.leave();
    await waiting;
  });
});
