import type { ComponentChildren, TargetedMouseEvent } from 'preact';
import { go } from './route.ts';

interface LinkProps {
  readonly to: string;
  readonly class?: string;
  /** it leads to the page that is shown */
  readonly isHere?: boolean;
  readonly children: ComponentChildren;
}

/** A link inside the app. A modified click still opens a new tab, as everywhere. */
export function Link({ to, children, class: name = '', isHere = false }: LinkProps) {
  const onClick = (event: TargetedMouseEvent<HTMLAnchorElement>): void => {
    if (event.ctrlKey || event.metaKey || event.shiftKey || event.altKey || event.button !== 0) return;
    event.preventDefault();
    go(to);
  };
  return (
    <a class={name} href={to} aria-current={isHere ? 'page' : undefined} onClick={onClick}>
      {children}
    </a>
  );
}
