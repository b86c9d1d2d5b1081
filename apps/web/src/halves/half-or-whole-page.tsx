import { useEffect } from 'preact/hooks';
import type { CustomersPageProps } from '../customers/page-props.ts';
import { Failure } from '../shell/states.tsx';
import { halfWords } from '../words/customers/half-words.ts';
import { said } from '../words/customers/language.ts';

/** Half an animal or a whole one, cut to instructions. */
export function HalfOrWholePage({ dayId }: CustomersPageProps & { readonly dayId: string }) {
  const words = said(halfWords);
  useEffect(() => {
    document.title = words.title;
  }, [dayId]);
  return <Failure title={words.title} says={words.askTheShop} />;
}
