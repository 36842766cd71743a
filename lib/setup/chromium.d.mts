export function chromiumPath(): string | null
export function ensureChromium(): Promise<string>
