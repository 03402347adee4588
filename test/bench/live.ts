export async function benchLive(): Promise<void> {}
