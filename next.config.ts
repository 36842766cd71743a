import type { NextConfig } from 'next'

/**
 * Scripts and styles come from this server only. Next starts each page with inline scripts
 * that carry its data; a nonce for them would make every page wait for a proxy, so inline
 * scripts stay allowed and everything foreign is not. React in development needs eval.
 */
const contentSecurityPolicy = [
  "default-src 'self'",
  `script-src 'self' 'unsafe-inline'${process.env.NODE_ENV === 'development' ? " 'unsafe-eval'" : ''}`,
  "style-src 'self' 'unsafe-inline'",
  "img-src 'self' data: blob:",
  "font-src 'self'",
  "connect-src 'self'",
  "object-src 'none'",
  "base-uri 'self'",
  "form-action 'self'",
  "frame-ancestors 'none'",
].join('; ')

const securityHeaders = [
  { key: 'Content-Security-Policy', value: contentSecurityPolicy },
  { key: 'X-Frame-Options', value: 'DENY' },
  { key: 'X-Content-Type-Options', value: 'nosniff' },
  { key: 'Referrer-Policy', value: 'same-origin' },
  { key: 'Permissions-Policy', value: 'camera=(self), geolocation=(), microphone=()' },
]

const config: NextConfig = {
  reactStrictMode: true,
  poweredByHeader: false,
  serverExternalPackages: ['better-sqlite3', '@prisma/adapter-better-sqlite3', 'pdfkit', 'nodemailer'],
  // Types are held by `npm run check`, a part of `npm test`; the first start need not wait for them again.
  typescript: { ignoreBuildErrors: true },
  headers: async () => [{ source: '/:path*', headers: securityHeaders }],
}

export default config
