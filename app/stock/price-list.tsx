import type { PriceLine } from '@/lib/domain/stock/price-lines'

export const PriceList = ({ lines }: { readonly lines: readonly PriceLine[] }) => (
  <dl className="facts">
    {lines.map(({ label, text }) => (
      <div key={label} style={{ display: 'contents' }}>
        <dt>{label}</dt>
        <dd>{text}</dd>
      </div>
    ))}
  </dl>
)
