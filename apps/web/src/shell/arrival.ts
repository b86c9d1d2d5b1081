import { useEffect, useRef } from 'preact/hooks';
import { path } from './route.ts';

/** A new page starts at its top for a keyboard and a screen reader too. */
export function useFocusOnArrival(): void {
  const arrived = useRef(false);
  useEffect(() => {
    if (arrived.current) document.getElementById('content')?.focus();
    arrived.current = true;
  }, [path.value]);
}
