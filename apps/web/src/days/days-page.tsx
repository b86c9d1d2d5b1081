import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { Link } from '../shell/link.tsx';
import { Failure, Waiting } from '../shell/states.tsx';
import type { Answer, Client, DaySummary } from '../wire/client.ts';
import { dateText } from '../words/dates.ts';
import { words } from '../words/english.ts';

type Days = Answer<{ readonly days: readonly DaySummary[] }>;

function DayCard({ day }: { readonly day: DaySummary }) {
  return (
    <li class={`day-card ${day.state}`}>
      <Link to={`/days/${day.dayId}`}>
        <span class="day-date">{dateText(day.date)}</span>
        <span class="day-facts">
          {[words.days.animals(day.animals), words.days.orders(day.orders), words.days[day.state]].join(
            ' · ',
          )}
        </span>
        <span class={day.shortLines ? 'day-short some' : 'day-short'}>
          {day.shortLines === null ? words.days.unplanned : words.days.short(day.shortLines)}
        </span>
      </Link>
    </li>
  );
}

/** The cutting days of the shop. */
export function DaysPage({ client }: { readonly client: Client }) {
  const answer = useSignal<Days | null>(null);
  const look = async (): Promise<void> => {
    answer.value = null;
    answer.value = await client.readDays();
  };
  useEffect(() => {
    document.title = words.daysTitle;
    void look();
  }, []);
  const got = answer.value;
  return (
    <div class="days">
      <h1>{words.cuttingDays}</h1>
      <p class="to-yields">
        <Link to="/yields">{words.yields.link}</Link>
        <Link to="/curing">{words.curing.link}</Link>
      </p>
      {got === null && <Waiting says={words.failures.loadingDays} />}
      {got?.ok && got.value.days.length === 0 && (
        <Failure isPart={true} title={words.failures.noDaysTitle} says={words.failures.noDays} />
      )}
      {got?.ok && (
        <ul class="day-cards">
          {got.value.days.map((day) => (
            <DayCard key={day.dayId} day={day} />
          ))}
        </ul>
      )}
      {got && !got.ok && (
        <Failure
          isPart={true}
          title={got.why === 'refused' ? got.problem.title : words.failures.noNetworkTitle}
          says={got.why === 'refused' ? got.problem.detail : words.failures.noNetwork}
          {...(got.why !== 'refused' && { action: words.tryAgain, onAction: () => void look() })}
        />
      )}
    </div>
  );
}
