/** @jsxImportSource hono/jsx */
import type { Receipt } from '../services/bills/receipt.ts';

/** A receipt to read or to print from a browser. */
export function ReceiptPage({ shop, title, subtitle, rows, sums, caution }: Receipt) {
  return (
    <html lang="en">
      <head>
        <meta charset="utf-8" />
        <meta name="viewport" content="width=device-width, initial-scale=1" />
        <title>{`${title}, ${shop}`}</title>
        <link rel="stylesheet" href="/api/cut-sheet.css" />
      </head>
      <body>
        <h1>{shop}</h1>
        <p>{`${title} · ${subtitle}`}</p>
        <table>
          <tbody>
            {rows.map(({ name, weight, price, amount }) => (
              <tr>
                <th scope="row">{name}</th>
                <td>{weight}</td>
                <td>{price}</td>
                <td>{amount}</td>
              </tr>
            ))}
          </tbody>
          <tfoot>
            {sums.map(({ name, amount }) => (
              <tr>
                <th scope="row" colspan={3}>
                  {name}
                </th>
                <td>{amount}</td>
              </tr>
            ))}
          </tfoot>
        </table>
        {caution && <p>{caution}</p>}
      </body>
    </html>
  );
}
