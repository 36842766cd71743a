/** Facts that every paper begins with, from the shop's records. */
import type { AmpFacts, CustomerFacts, PaperSettings } from '@/lib/documents/facts'
import type { Amp } from '@/lib/domain/amp/amp'
import type { Customer } from '@/lib/domain/customer/customer'
import type { Shop } from '@/lib/domain/shop/shop'
import { volts } from '@/lib/domain/units'
import { wordsFor } from '@/lib/domain/words'

const lines = (text: string): string[] =>
  text
    .split('\n')
    .map((line) => line.trim())
    .filter(Boolean)

export function paperSettings(shop: Shop, issuedAt: Date): PaperSettings {
  return {
    shop: { name: shop.name, addressLines: lines(shop.address), phone: shop.phone, email: shop.email },
    size: shop.paper,
    words: shop.words,
    locale: wordsFor(shop.words).locale,
    zone: shop.timeZone,
    currency: shop.currency,
    issuedAt: issuedAt.toISOString(),
  }
}

export function customerFacts({ name, address, phone, email, preferredContact }: Customer): CustomerFacts {
  return { name, addressLines: lines(address), phone, email, preferredContact }
}

export function ampFacts({ make, model, serial, mainsVolts, protectionClass, fuse }: Amp): AmpFacts {
  return {
    make,
    model,
    serial,
    mainsVoltage: volts(mainsVolts),
    protectionClass: protectionClass === 'unknown' ? null : protectionClass,
    fuse,
  }
}
