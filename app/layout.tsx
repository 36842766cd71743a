import type { Metadata, Viewport } from 'next'
import { wordsFor } from '@/lib/domain/words'
import { currentShop } from '@/lib/session'
import './globals.css'

export const metadata: Metadata = { title: { default: 'Benchglow', template: '%s · Benchglow' } }
export const viewport: Viewport = {
  themeColor: [
    { media: '(prefers-color-scheme: light)', color: '#f4eee0' },
    { media: '(prefers-color-scheme: dark)', color: '#171512' },
  ],
}

/** Every page shows records of the moment, so none is drawn ahead at build time. */
export const dynamic = 'force-dynamic'

export default async function RootLayout({ children }: LayoutProps<'/'>) {
  const shop = await currentShop()
  return (
    <html lang={wordsFor(shop?.words ?? 'US').locale}>
      <body>{children}</body>
    </html>
  )
}
