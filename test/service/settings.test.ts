import { describe, expect, it } from '@jest/globals';
import { isLoopback, readSettings, SettingError } from '../../src/settings.js';

describe('settings', () => {
  it('are this computer only, on port 3210, when nothing is set', () => {
    const expected = { port: 3210, host: '127.0.0.1', allowedHosts: [], tls: undefined };
    expect(readSettings({})).toEqual(expected);
    expect(readSettings({ PORT: '', HOST: '', ALLOWED_HOSTS: '', DATABASE_URL: '' })).toEqual(
      expected,
    );
  });

  it('are read from the environment', () => {
    expect(
      readSettings({
        PORT: '0',
        HOST: '::',
        ALLOWED_HOSTS: ' Farm.lan, barn.home.arpa,',
        TLS_CERT: 'c',
        TLS_KEY: 'k',
        DATABASE_URL: 'postgres://u:p@h/d',
      }),
    ).toEqual({
      port: 0,
      host: '::',
      allowedHosts: ['farm.lan', 'barn.home.arpa'],
      tls: { certificateFile: 'c', keyFile: 'k' },
    });
  });

  it.each([
    ['a port that is no number', { PORT: 'abc' }, /^PORT is "abc", but must be/],
    ['a port past every port', { PORT: '70000' }, /^PORT is "70000", but must be/],
    ['a port with a fraction', { PORT: '1e3' }, /^PORT is "1e3", but must be/],
    ['an address with a scheme', { HOST: 'http://x' }, /^HOST is "http:\/\/x", but/],
    ['a name allowed with a path', { ALLOWED_HOSTS: 'a.lan/x' }, /^ALLOWED_HOSTS holds "a\.lan/],
    ['a certificate without its key', { TLS_CERT: 'c.pem' }, /^TLS_CERT is set but TLS_KEY is not/],
    ['a key without its certificate', { TLS_KEY: 'k.pem' }, /^TLS_KEY is set but TLS_CERT is not/],
    ['another kind of database', { DATABASE_URL: 'mysql://u:secret@h/d' }, /^DATABASE_URL cannot/],
    ['a database without a scheme', { DATABASE_URL: 'host/d' }, /^DATABASE_URL cannot/],
  ])('refuse %s, and say what to write', (_what, env, words) => {
    expect(() => readSettings(env)).toThrow(SettingError);
    expect(() => readSettings(env)).toThrow(words);
    expect(() => readSettings(env)).not.toThrow(/secret/);
  });

  it.each([
    ['localhost', true],
    ['127.0.0.1', true],
    ['127.9.9.9', true],
    ['::1', true],
    ['0.0.0.0', false],
    ['::', false],
    ['192.168.1.5', false],
    ['127.example.org', false],
  ])('know whether %s is this computer only', (host, expected) => {
    expect(isLoopback(host)).toBe(expected);
  });
});
