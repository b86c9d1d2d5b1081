import type { ComponentChildren, TargetedMouseEvent } from 'preact';
import { go } from './route.ts';

interface LinkProps {
  readonly to: string;
  readonly class?: string;
  readonly children: ComponentChildren;
}

/** A link inside the app. A modified click still opens a new tab, as everywhere. */
export function Link({ to, children, class: name = '' }: LinkProps) {
  const onClick = (event: TargetedMouseEvent<HTMLAnchorElement>): void => {
    if (event.ctrlKey || event.metaKey || event.shiftKey || event.altKey || event.button !== 0) return;
    event.preventDefault();
    go(to);
  };
  return (
    <a class={name} href={to} onClick={onClick}>
      {children}
    </a>
  );
}
