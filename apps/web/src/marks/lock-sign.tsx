/** A padlock, shut or open. */
export function LockSign({ shut }: { readonly shut: boolean }) {
  return (
    <svg class="lock-sign" width="14" height="16" viewBox="0 0 14 16" aria-hidden="true" focusable="false">
      <path class="bow" d={shut ? 'M3.5 7V4.5a3.5 3.5 0 0 1 7 0V7' : 'M3.5 7V4a3.5 3.5 0 0 1 6.8-1.1'} />
      <rect class={shut ? 'body shut' : 'body'} x="1.5" y="7" width="11" height="8" rx="1.5" />
    </svg>
  );
}
