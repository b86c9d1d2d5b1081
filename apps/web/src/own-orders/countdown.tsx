import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { said } from '../words/customers/language.ts';
import { mineWords } from '../words/customers/mine-words.ts';

/** Seconds until an instant, never below nothing. */
const secondsUntil = (instant: string, nowMs: number): number =>
  Math.max(0, Math.ceil((Date.parse(instant) - nowMs) / 1000));

function leftSaid(seconds: number): string {
  const words = said(mineWords);
  if (seconds >= 5400) return words.days(Math.round(seconds / 3600));
  return words.minutes(Math.floor(seconds / 60), String(seconds % 60).padStart(2, '0'));
}

interface CountdownProps {
  readonly until: string;
  readonly nowMs: () => number;
  readonly onOver: () => void;
}

/**
 * The time that is left, each second. A screen reader hears it when it is asked, not every second; the service's own clock
 * decides, this one only shows.
 */
export function Countdown({ until, nowMs, onOver }: CountdownProps) {
  const words = said(mineWords);
  const left = useSignal(secondsUntil(until, nowMs()));
  useEffect(() => {
    left.value = secondsUntil(until, nowMs());
    const tick = setInterval(() => {
      left.value = secondsUntil(until, nowMs());
      if (left.value > 0) return;
      clearInterval(tick);
      onOver();
    }, 1000);
    return () => clearInterval(tick);
  }, [until]);
  return (
    <p class="countdown" role="timer">
      <span>{words.heldFor}</span> <strong>{leftSaid(left.value)}</strong>
    </p>
  );
}
