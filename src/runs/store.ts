import { DuckDBInstance } from '@duckdb/node-api';

/** A statement's answer, a column at a time. */
export interface Table {
  readonly names: readonly string[];
  readonly columns: readonly (readonly unknown[])[];
}

/** The embedded database, in memory only: recordings are Parquet files that it reads and writes. */
export interface Store {
  run(sql: string): Promise<void>;
  read(sql: string): Promise<Table>;
}

/** Opens the database for as long as `work` lasts. */
export async function withStore<Result>(work: (store: Store) => Promise<Result>): Promise<Result> {
  const instance = await DuckDBInstance.create(':memory:', {
    autoinstall_known_extensions: 'false',
    autoload_known_extensions: 'false',
  });
  const connection = await instance.connect();
  try {
    return await work({
      run: async (sql) => {
        await connection.run(sql);
      },
      read: async (sql) => {
        const reader = await connection.runAndReadAll(sql);
        const names = reader.columnNames();
        const columns = reader.getColumnsJS();
        // No rows come as no columns.
        return { names, columns: names.map((_, c) => columns[c] ?? []) };
      },
    });
  } finally {
    connection.closeSync();
    instance.closeSync();
  }
}

/** A text as an SQL string. */
export function quoted(text: string): string {
  return `'${text.replaceAll("'", "''")}'`;
}

/** A column's name as an SQL identifier. */
export function identifier(name: string): string {
  return `"${name.replaceAll('"', '""')}"`;
}
