import { describe, expect, it } from 'vitest';
import { DEFAULT_PORT, DEFAULT_TLS_PORT, readArguments } from '../../server/main/arguments.ts';
import { defaultDataFolder } from '../../server/main/data-folder.ts';

describe('the command line', () => {
  it('P13 needs no option', () => {
    const value = {
      bakehouse: null,
      data: null,
      backups: null,
      port: DEFAULT_PORT,
      isHereOnly: false,
      isClaimedAnew: false,
      names: [],
      tls: false,
      tlsPort: DEFAULT_TLS_PORT,
      pace: 1,
      help: false,
    };
    expect(readArguments([])).toEqual({ ok: true, value });
  });

  it('P13 takes each option, with its value after it or after an equals sign', () => {
    const value = {
      bakehouse: 'day.json',
      data: 'here',
      backups: 'stick',
      port: 0,
      isHereOnly: true,
      isClaimedAnew: true,
      names: ['ovens.example', 'oven'],
      tls: true,
      tlsPort: 0,
      pace: 2.5,
      help: true,
    };
    expect(
      readArguments([
        '--bakehouse',
        'day.json',
        '--data',
        'here',
        '--backups',
        'stick',
        '--port',
        '0',
        '--here',
        '--claim',
        '--name',
        'Ovens.example',
        '--name',
        'oven',
        '--tls',
        '--tls-port',
        '0',
        '--pace',
        '2.5',
        '--help',
      ]),
    ).toEqual({
      ok: true,
      value,
    });
    expect(
      readArguments([
        '--bakehouse=day.json',
        '--data=here',
        '--backups=stick',
        '--port=0',
        '--here',
        '--claim',
        '--name=Ovens.example',
        '--name=oven',
        '--tls',
        '--tls-port=0',
        '--pace=2.5',
        '--help',
      ]),
    ).toEqual({
      ok: true,
      value,
    });
  });

  it.each([
    [['--colour', 'red'], 'There is no option --colour.'],
    [['--toString'], 'There is no option --toString.'],
    [['-p', '80'], 'There is no option -p.'],
    [['day.json'], '"day.json" is not an option; files and folders come after --bakehouse and --data.'],
    [['--port'], '--port needs a value after it.'],
    [['--port', '--here'], '--port needs a value after it.'],
    [['--data='], '--data needs a value after it.'],
    [['--bakehouse', ''], '--bakehouse needs a value after it.'],
    [['--here=yes'], '--here takes no value.'],
    [['--name', 'my_oven'], '--name takes a host name such as ovens.example, not "my_oven".'],
    [['--port', '65536'], '--port takes a number from 0 to 65535, not "65536".'],
    [['--port', '80.5'], '--port takes a number from 0 to 65535, not "80.5".'],
    [['--port', 'http'], '--port takes a number from 0 to 65535, not "http".'],
    [['--pace', '0'], '--pace takes a number from 1 to 3600, not "0".'],
    [['--pace', '3601'], '--pace takes a number from 1 to 3600, not "3601".'],
    [['--pace', 'fast'], '--pace takes a number from 1 to 3600, not "fast".'],
  ])('P13 says in one sentence what is wrong with %j', (args, fault) => {
    expect(readArguments(args)).toEqual({ ok: false, fault });
  });
});

describe('the default data folder', () => {
  // XDG Base Directory Specification: $XDG_DATA_HOME, or $HOME/.local/share where it is not set, empty or relative.
  it.each([
    [{ XDG_DATA_HOME: '/srv/data' }, '/srv/data/ovenward'],
    [{}, '/home/baker/.local/share/ovenward'],
    [{ XDG_DATA_HOME: '' }, '/home/baker/.local/share/ovenward'],
    [{ XDG_DATA_HOME: 'data' }, '/home/baker/.local/share/ovenward'],
  ])('P2 with %j is %s', (environment, folder) => {
    expect(defaultDataFolder(environment, '/home/baker')).toBe(folder);
  });
});
