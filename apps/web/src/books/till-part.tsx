import { useSignal } from '@preact/signals';
import type { TargetedSubmitEvent } from 'preact';
import { useEffect, useMemo } from 'preact/hooks';
import type { OrderAccount } from '../wire/books-client.ts';
import { booksWords } from '../words/books-words.ts';
import { moneyText } from '../words/measures.ts';
import { amountText, readAmount } from './amounts.ts';
import type { BooksPageProps } from './packs-page.tsx';
import { createPageStore, type PageStore } from './page-store.ts';
import { Field, Refusal, Shown } from './shown.tsx';

const says = booksWords.till;
type Method = 'cash' | 'card-terminal' | 'transfer';
type Kind = 'deposit' | 'payment' | 'refund' | 'credit';
const methods: readonly Method[] = ['cash', 'card-terminal', 'transfer'];

interface MoneyProps {
  readonly account: OrderAccount;
  readonly currency: string;
}

/** The bill line by line, or what it would be on the packs so far. */
function BillTable({ account, currency }: MoneyProps) {
  const { bill, draft, paidMinor, dueMinor } = account;
  const shown = bill ?? draft;
  const row = (name: string, minor: number) => (
    <tr key={name}>
      <th scope="row">{name}</th>
      <td class="sum">{moneyText(minor, currency)}</td>
    </tr>
  );
  if (!shown) return null;
  return (
    <table class="bill">
      <caption>{bill ? says.bill(bill.number) : says.soFar}</caption>
      <tbody>
        {shown.lines.map(({ name, weight, amountMinor }, place) => (
          <tr key={place}>
            <th scope="row">{`${name}${weight ? `, ${weight.text} ${weight.unit}` : ''}`}</th>
            <td class="sum">{moneyText(amountMinor, currency)}</td>
          </tr>
        ))}
        {shown.taxes.filter(({ taxMinor }) => taxMinor > 0).map(({ name, taxMinor }) => row(name, taxMinor))}
      </tbody>
      <tfoot>
        {row(says.total, shown.totalMinor)}
        {paidMinor > 0 && row(bill ? says.paid : says.deposit, paidMinor)}
        {bill && row(dueMinor < 0 ? says.back : says.due, Math.abs(dueMinor))}
      </tfoot>
    </table>
  );
}

interface PayProps extends MoneyProps {
  readonly onPay: (kind: Kind, method: Method, amountMinor: number) => void;
  readonly isBusy: boolean;
}

/** Money that moves: a deposit before the bill, the rest after it, or what was too much. */
function Pay({ account, currency, onPay, isBusy }: PayProps) {
  const { bill, dueMinor } = account;
  const kind: Kind = bill === null ? 'deposit' : dueMinor < 0 ? 'refund' : 'payment';
  const text = useSignal('');
  const method = useSignal<Method>('cash');
  useEffect(() => {
    text.value = bill === null ? '' : amountText(Math.abs(dueMinor), currency);
  }, [bill, dueMinor]);
  if (bill !== null && dueMinor === 0) return null;
  const submit = (event: TargetedSubmitEvent<HTMLFormElement>): void => {
    event.preventDefault();
    const amountMinor = readAmount(text.value, currency);
    if (amountMinor !== null) onPay(kind, method.value, amountMinor);
  };
  return (
    <form class="pay" onSubmit={submit}>
      <div class="field-grid">
        <Field label={says.amount} id="amount">
          <input
            id="amount"
            inputMode="decimal"
            required
            value={text}
            onInput={(event) => {
              text.value = event.currentTarget.value;
            }}
          />
        </Field>
        <Field label={says.method} id="method">
          <select
            id="method"
            value={method.value}
            onChange={(event) => {
              method.value = event.currentTarget.value as Method;
            }}
          >
            {methods.map((each) => (
              <option key={each} value={each}>
                {says.methods[each]}
              </option>
            ))}
          </select>
        </Field>
      </div>
      <button type="submit" disabled={isBusy}>
        {says.kinds[kind]}
      </button>
    </form>
  );
}

function Settle({
  account,
  store,
  onSettle,
}: {
  readonly account: OrderAccount;
  readonly store: PageStore<OrderAccount>;
  readonly onSettle: () => void;
}) {
  if (account.bill !== null) return null;
  if (account.unpacked > 0) return <p class="hint">{says.unpacked(account.unpacked)}</p>;
  return (
    <button type="button" class="strong" disabled={store.isBusy.value} onClick={onSettle}>
      {says.settle}
    </button>
  );
}

/** Where the order stands with the till. */
export function TillPart({ orderId, books, session, newKey }: BooksPageProps & { readonly orderId: string }) {
  const store = useMemo(() => createPageStore(() => books.readAccount(orderId)), [books, orderId]);
  useEffect(() => void store.look(), [store]);
  const { currency } = session.shop;
  return (
    <section aria-labelledby="till">
      <h2 id="till">{says.title}</h2>
      <Shown answer={store.shown.value} onAgain={() => void store.look()}>
        {(account) => (
          <>
            {account.bill === null && (
              <p class="hint">
                {`${says.estimate}: ${says.range(moneyText(account.estimate.fromMinor, currency), moneyText(account.estimate.toMinor, currency))}. ${says.estimateSays}`}
              </p>
            )}
            <BillTable account={account} currency={currency} />
            <Refusal store={store} />
            <Settle
              account={account}
              store={store}
              onSettle={() => void store.send(() => books.settle(orderId, { fees: [] }, newKey()))}
            />
            <Pay
              account={account}
              currency={currency}
              isBusy={store.isBusy.value}
              onPay={(kind, method, amountMinor) =>
                void store.send(() => books.pay(orderId, { kind, method, amountMinor }, newKey()))
              }
            />
          </>
        )}
      </Shown>
    </section>
  );
}
