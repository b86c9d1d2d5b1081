/** A list of a mail: rows of a name and what is said of it. */
export interface MailList {
  readonly title: string;
  readonly rows: readonly (readonly [name: string, value: string])[];
}

/** A mail before it is text or a page. Nothing in it is markup. */
export interface MailContent {
  /** BCP 47 */
  readonly language: string;
  readonly subject: string;
  readonly greeting: string;
  readonly text: string;
  readonly lists: readonly MailList[];
  readonly link: { readonly says: string; readonly url: string };
  readonly cautions: {
    readonly title: string;
    readonly items: readonly { readonly says: string; readonly source: string }[];
  } | null;
  readonly signature: string;
}

const row = ([name, value]: readonly [string, string]): string =>
  value === '' ? `- ${name}` : `- ${name}: ${value}`;

/** The mail as plain text, for whoever reads mail without pages. */
export function mailText({ greeting, text, lists, link, cautions, signature }: MailContent): string {
  const blocks = [
    greeting,
    text,
    ...lists.map(({ title, rows }) => [title, ...rows.map(row)].join('\n')),
    link.url,
    ...(cautions
      ? [[cautions.title, ...cautions.items.map(({ says, source }) => `- ${says} (${source})`)].join('\n')]
      : []),
    signature,
  ];
  return `${blocks.join('\n\n')}\n`;
}

const entities: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/** Text as it may stand in a page or in a quoted attribute. */
const escaped = (text: string): string => text.replaceAll(/[&<>"']/g, (mark) => entities[mark] ?? mark);

const cell = 'padding:4px 12px 4px 0;text-align:left;vertical-align:top;font-weight:normal';

const listHtml = ({ title, rows }: MailList): string => {
  const cells = rows.map(
    ([name, value]) =>
      `<tr><th scope="row" style="${cell}"><bdi>${escaped(name)}</bdi></th><td style="${cell}">${escaped(value)}</td></tr>`,
  );
  return `<h2 style="font-size:17px;margin:20px 0 4px">${escaped(title)}</h2><table role="presentation" style="border-collapse:collapse">${cells.join('')}</table>`;
};

/** The same as a page without pictures, scripts or anything that is fetched: it reads the same wherever it is opened. */
export function mailHtml({
  language,
  subject,
  greeting,
  text,
  lists,
  link,
  cautions,
  signature,
}: MailContent): string {
  const warned = cautions
    ? `<h2 style="font-size:17px;margin:20px 0 4px">${escaped(cautions.title)}</h2><ul style="padding-left:20px;margin:0">${cautions.items
        .map(({ says, source }) => `<li>${escaped(says)} <cite>${escaped(source)}</cite></li>`)
        .join('')}</ul>`
    : '';
  return `<!doctype html>
<html lang="${escaped(language)}"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width"><title>${escaped(subject)}</title></head>
<body style="margin:0;padding:20px;background:#f3e7d3;color:#2b2118;font:17px/1.45 sans-serif"><div style="max-width:560px;margin:0 auto">
<p><bdi>${escaped(greeting)}</bdi></p>
<p>${escaped(text)}</p>
${lists.map(listHtml).join('\n')}
<p style="margin:24px 0"><a href="${escaped(link.url)}" style="display:inline-block;padding:12px 18px;background:#1d2f4f;color:#ffffff;text-decoration:none;border-radius:4px">${escaped(link.says)}</a></p>
${warned}
<p style="margin-top:24px">${escaped(signature)}</p>
</div></body></html>
`;
}
