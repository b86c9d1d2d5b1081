import type { Catalogue } from './language.ts';

const english = {
  title: 'My orders',
  noneTitle: 'No orders yet',
  none: 'When you order something it stands here.',
  order: (number: number) => `Order ${number}`,
  states: {
    queued: 'in the queue',
    held: 'held for you',
    standing: 'reserved',
    lapsed: 'hold ran out',
    released: 'given back',
    cancelled: 'cancelled',
  },
};

const spanish: typeof english = {
  title: 'Mis pedidos',
  noneTitle: 'Todavía no hay pedidos',
  none: 'Cuando pida algo, aparecerá aquí.',
  order: (number) => `Pedido ${number}`,
  states: {
    queued: 'en la cola',
    held: 'guardado para usted',
    standing: 'reservado',
    lapsed: 'se acabó el plazo',
    released: 'devuelto',
    cancelled: 'anulado',
  },
};

export const mineWords: Catalogue<typeof english> = { english, spanish };
