/** Switches off what the site's framework would tell its makers, or ask them, by itself. Imported before it runs. */
process.env['ASTRO_TELEMETRY_DISABLED'] = '1';
process.env['ASTRO_DISABLE_UPDATE_CHECK'] = 'true';
