import { describe, expect, it } from 'vitest';
import { type MailContent, mailHtml, mailText } from './lay-mail.ts';
import { english, type MailKind, spanish } from './mail-words.ts';

const wicked = `Bo "<script>alert(1)</script>" O'Neil & Söhne \u05d0\u05d1 🐖`;
const content: MailContent = {
  language: 'en',
  subject: 'Order 7: reserved',
  greeting: `${wicked},`,
  text: 'Your order is reserved.',
  lists: [
    {
      title: 'You asked for',
      rows: [
        [wicked, '4'],
        ['Half a hog', ''],
      ],
    },
  ],
  link: { says: 'See your order', url: 'https://shop.example/#/link/x"onclick="y' },
  cautions: { title: 'To be safe', items: [{ says: english.cook, source: 'USDA, 2011' }] },
  signature: 'Tallow Lane Butchery',
};

describe('a mail', () => {
  it('says the same as text and as a page, where nothing that people wrote is markup', () => {
    const text = mailText(content);
    const html = mailHtml(content);
    expect(text).toContain(`- ${wicked}: 4\n- Half a hog\n`);
    expect(text).toContain('\nhttps://shop.example/#/link/');
    const tags = [...html.matchAll(/<(\/?[a-z!][a-z0-9]*)/g)].map(([, tag]) => tag);
    expect(tags).not.toContain('script');
    // Nothing is fetched when it is opened.
    expect(html).not.toMatch(/<(img|link|iframe|style|form)|src=|url\(/);
    expect(html.match(/onclick/g)).toHaveLength(1);
    expect(html).toContain('x&quot;onclick=&quot;y');
    const plain = html
      .replace(/<head>.*<\/head>/s, '')
      .replaceAll(/<[^>]+>/g, ' ')
      .replaceAll('&lt;', '<')
      .replaceAll('&gt;', '>')
      .replaceAll('&quot;', '"')
      .replaceAll('&#39;', "'")
      .replaceAll('&amp;', '&');
    for (const said of [
      wicked,
      content.text,
      'You asked for',
      english.cook,
      'USDA, 2011',
      content.signature,
    ]) {
      expect(plain).toContain(said);
      expect(text).toContain(said);
    }
  });

  it('has a subject of one line for everything that can be told, in either language', () => {
    const told = { shopName: 'Tallow Lane Butchery', number: 7, day: 'Friday', until: '12:30' };
    for (const words of [english, spanish]) {
      for (const kind of Object.keys(words.kinds) as MailKind[]) {
        const [subject, text] = words.kinds[kind](told);
        expect(subject).toMatch(/^[^\p{Cc}]{1,200}$/u);
        expect(`${subject} ${text}`).not.toMatch(/undefined|null/);
      }
    }
  });

  // USDA, May 2011: whole cuts of pork 145 °F and three minutes of rest; ground pork and organs 160 °F.
  it('tells the same temperatures in both languages', () => {
    for (const { cook, cold } of [english, spanish]) {
      for (const figure of ['145 °F', '63 °C', '160 °F', '71 °C']) expect(cook).toContain(figure);
      expect(cold).toMatch(/40 °F/);
    }
  });
});
