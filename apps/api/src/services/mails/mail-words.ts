export type MailKind =
  | 'order.queued'
  | 'order.held'
  | 'order.reserved'
  | 'order.promoted'
  | 'order.lapsed'
  | 'order.released'
  | 'order.dismissed'
  | 'order.cancelled'
  | 'order.short'
  | 'order.ready'
  | 'order.receipt'
  | 'order.link'
  | 'account.link';

/** What sentences are filled in with. */
interface Told {
  readonly shopName: string;
  readonly number: number | null;
  /** date of the cutting day in the language of the mail */
  readonly day: string;
  /** in the shop's own time; null where nothing is held */
  readonly until: string | null;
}

/** Everything a mail says in one language. */
export interface MailWords {
  readonly tag: 'en' | 'es';
  readonly kinds: Readonly<Record<MailKind, (told: Told) => readonly [subject: string, text: string]>>;
  readonly greeting: (name: string) => string;
  readonly openOrder: string;
  readonly openShop: string;
  readonly ordered: string;
  readonly half: (species: string) => string;
  readonly whole: (species: string) => string;
  readonly ownWay: string;
  readonly sharedWith: (name: string) => string;
  readonly deposit: string;
  readonly lacks: string;
  readonly ofAsked: (filled: string, asked: string) => string;
  readonly noSide: string;
  readonly ribs: (count: number) => string;
  /** species by id, where the language has a name of its own */
  readonly species: Readonly<Record<string, string>>;
  readonly total: string;
  readonly due: string;
  readonly owed: string;
  readonly packs: (count: number) => string;
  readonly bill: string;
  readonly weighed: string;
  readonly cautions: string;
  readonly cook: string;
  readonly cold: string;
  readonly localRules: string;
}

export const english: MailWords = {
  tag: 'en',
  kinds: {
    'order.queued': ({ number }) => [
      `Order ${number}: in the queue`,
      'The day has no room for your order now. It waits in the queue in the order in which orders came; you get a mail when there is room.',
    ],
    'order.held': ({ number, until }) => [
      `Order ${number}: held until ${until}`,
      `What you asked for is held for you until ${until}. Reserve it before then, or it goes back to the shop.`,
    ],
    'order.reserved': ({ number, day }) => [
      `Order ${number}: reserved`,
      `Your order is reserved for ${day}: every piece of it is in the cutting plan of the day. Weights are estimates until the scale has spoken.`,
    ],
    'order.promoted': ({ number, until }) => [
      `Order ${number}: there is room, held until ${until}`,
      `There is room for your order. It is held for you until ${until}. Reserve it before then, or the next in the queue gets it.`,
    ],
    'order.lapsed': ({ number }) => [
      `Order ${number}: the hold has lapsed`,
      'The time to reserve has passed, and what was held has gone back to the shop. You may ask for it again.',
    ],
    'order.released': ({ number }) => [`Order ${number}: released`, 'Your order is released, as you asked.'],
    'order.dismissed': ({ number }) => [
      `Order ${number}: no room was left`,
      'The day is being cut and no room came free for your order. You owe nothing.',
    ],
    'order.cancelled': ({ number }) => [
      `Order ${number}: cancelled`,
      'The shop has cancelled your order. Nothing of it will be cut. Ask the shop if you did not expect this.',
    ],
    'order.short': ({ number, day }) => [
      `Order ${number}: we cannot keep all of it`,
      `The carcasses of ${day} gave less than was planned, and a part of your order cannot be cut. The shop will talk to you about it.`,
    ],
    'order.ready': ({ number }) => [
      `Order ${number}: ready`,
      'All of your order is weighed and packed. Bring cool boxes: raw meat stays cold on the way home.',
    ],
    'order.receipt': ({ number }) => [
      `Order ${number}: your bill`,
      'Here is what the scale said and what it comes to.',
    ],
    'order.link': ({ number }) => [
      `Order ${number}: your link`,
      'With the link below you see and change your order.',
    ],
    'account.link': ({ shopName }) => [
      `Your way in at ${shopName}`,
      'With the link below you come in without a password.',
    ],
  },
  greeting: (name) => `${name},`,
  openOrder: 'See your order',
  openShop: 'Come in',
  ordered: 'You asked for',
  half: (species) => `Half a ${species.toLowerCase()}`,
  whole: (species) => `A whole ${species.toLowerCase()}`,
  ownWay: 'cut to your instructions',
  sharedWith: (name) => `shared with ${name}`,
  deposit: 'Deposit',
  lacks: 'What cannot be cut',
  ofAsked: (filled, asked) => `${filled} of ${asked}`,
  noSide: 'no side is left for it',
  ribs: (count) => (count === 1 ? '1 rib' : `${count} ribs`),
  species: {},
  total: 'Total',
  due: 'Due',
  owed: 'We owe you',
  packs: (count) => (count === 1 ? '1 pack' : `${count} packs`),
  bill: 'Bill',
  weighed: 'Packed',
  cautions: 'To be safe',
  cook: 'Cook chops and roasts to 145 °F (63 °C) in the middle and let them rest 3 minutes; ground pork, sausage and organs to 160 °F (71 °C). Use a thermometer.',
  cold: 'Keep raw meat at 40 °F (4 °C) or below, from the counter to your kitchen, or freeze it at once.',
  localRules: 'Local rules may ask for more.',
};

export const spanish: MailWords = {
  tag: 'es',
  kinds: {
    'order.queued': ({ number }) => [
      `Pedido ${number}: en la cola`,
      'El día no tiene sitio ahora para su pedido. Espera en la cola por orden de llegada; recibirá un correo cuando haya sitio.',
    ],
    'order.held': ({ number, until }) => [
      `Pedido ${number}: guardado hasta ${until}`,
      `Lo que pidió está guardado para usted hasta ${until}. Resérvelo antes, o vuelve a la carnicería.`,
    ],
    'order.reserved': ({ number, day }) => [
      `Pedido ${number}: reservado`,
      `Su pedido está reservado para ${day}: todas sus piezas están en el plan de corte de ese día. Los pesos son cálculos hasta que hable la balanza.`,
    ],
    'order.promoted': ({ number, until }) => [
      `Pedido ${number}: hay sitio, guardado hasta ${until}`,
      `Hay sitio para su pedido. Está guardado para usted hasta ${until}. Resérvelo antes, o será del siguiente en la cola.`,
    ],
    'order.lapsed': ({ number }) => [
      `Pedido ${number}: se acabó el plazo`,
      'Pasó el tiempo para reservar, y lo guardado volvió a la carnicería. Puede pedirlo otra vez.',
    ],
    'order.released': ({ number }) => [`Pedido ${number}: devuelto`, 'Su pedido está devuelto, como quiso.'],
    'order.dismissed': ({ number }) => [
      `Pedido ${number}: no quedó sitio`,
      'El día ya se está cortando y no quedó sitio para su pedido. No debe nada.',
    ],
    'order.cancelled': ({ number }) => [
      `Pedido ${number}: anulado`,
      'La carnicería ha anulado su pedido. No se cortará nada de él. Pregunte si no lo esperaba.',
    ],
    'order.short': ({ number, day }) => [
      `Pedido ${number}: no podemos cumplirlo todo`,
      `Las canales de ${day} dieron menos de lo previsto, y una parte de su pedido no se puede cortar. La carnicería hablará con usted.`,
    ],
    'order.ready': ({ number }) => [
      `Pedido ${number}: listo`,
      'Todo su pedido está pesado y empaquetado. Traiga neveras: la carne cruda va fría hasta casa.',
    ],
    'order.receipt': ({ number }) => [
      `Pedido ${number}: su cuenta`,
      'Esto es lo que dijo la balanza y lo que suma.',
    ],
    'order.link': ({ number }) => [
      `Pedido ${number}: su enlace`,
      'Con el enlace de abajo ve y cambia su pedido.',
    ],
    'account.link': ({ shopName }) => [
      `Su entrada a ${shopName}`,
      'Con el enlace de abajo entra sin contraseña.',
    ],
  },
  greeting: (name) => `${name}:`,
  openOrder: 'Ver su pedido',
  openShop: 'Entrar',
  ordered: 'Usted pidió',
  half: (species) => `Medio ${species.toLowerCase()}`,
  whole: (species) => `Un ${species.toLowerCase()} entero`,
  ownWay: 'cortado según sus instrucciones',
  sharedWith: (name) => `compartido con ${name}`,
  deposit: 'Señal',
  lacks: 'Lo que no se puede cortar',
  ofAsked: (filled, asked) => `${filled} de ${asked}`,
  noSide: 'no queda ningún lado',
  ribs: (count) => (count === 1 ? '1 costilla' : `${count} costillas`),
  species: { hog: 'cerdo', lamb: 'cordero', goat: 'cabrito', 'beef-fore': 'delantero de vacuno' },
  total: 'Total',
  due: 'Por pagar',
  owed: 'Le debemos',
  packs: (count) => (count === 1 ? '1 paquete' : `${count} paquetes`),
  bill: 'Cuenta',
  weighed: 'Empaquetado',
  cautions: 'Para su seguridad',
  cook: 'Cocine chuletas y asados a 63 °C (145 °F) en el centro y déjelos reposar 3 minutos; la carne picada, las salchichas y los órganos, a 71 °C (160 °F). Use un termómetro.',
  cold: 'Mantenga la carne cruda a 4 °C (40 °F) o menos, del mostrador a su cocina, o congélela enseguida.',
  localRules: 'Las normas de su lugar pueden pedir más.',
};
