'use client'
/** The frame itself could not be drawn, so nothing of it is used here: no shop, no style sheet, no link into it. */
export default function GlobalError({ error }: { error: Error & { digest?: string } }) {
  return (
    <html lang="en">
      <body style={{ fontFamily: 'system-ui, sans-serif', margin: '3rem', maxWidth: '40rem' }}>
        <h1>Benchglow could not draw this page</h1>
        <p>
          The fault is in the program or its database, not in what you did. What was saved before is safe. Load the page
          again; if it stays so, tell whoever looks after the server.
        </p>
        {error.digest && <p>Code: {error.digest}</p>}
      </body>
    </html>
  )
}
