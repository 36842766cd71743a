/** The two shops that playwright.config.ts serves, and the port on which it expects mail to be taken. */
export const demoShop = `http://127.0.0.1:${process.env.E2E_DEMO_PORT}`
export const emptyShop = `http://127.0.0.1:${process.env.E2E_EMPTY_PORT}`
export const smtpPort = Number(process.env.E2E_SMTP_PORT)
