import { describe, expect, it } from 'vitest';
import { collections } from '../../src/generated/schema-tables.js';
import { Collection, LayoutModel } from '../../src/model/layout-model.js';

describe('a collection of records', () => {
  it('pairs a record with the first one before it that has its id', () => {
    const collection = new Collection<string>();
    for (const id of ['A', 'B', 'A', 'a', 'A']) collection.define(id, `record ${id}`, 0);
    expect(collection.duplicates).toEqual([
      [2, 0],
      [4, 0],
    ]);
    expect(collection.indexOf(collection.names.find('A'))).toBe(0);
  });

  it('tells ids that are defined from ids that are only referred to', () => {
    const collection = new Collection<string>();
    const referred = collection.names.addText('X');
    collection.define('A', 'record', 0);
    expect([collection.isDefined('A'), collection.isDefined('X'), collection.isDefined('Y')]).toEqual([
      true,
      false,
      false,
    ]);
    expect(collection.indexOf(referred)).toBe(-1);
    collection.define('X', 'record', 9);
    expect(collection.indexOf(referred)).toBe(1);
  });

  it('counts records without a readable id, and broken ones with it', () => {
    const collection = new Collection<string>();
    collection.define(undefined, undefined, 3);
    collection.define('A', undefined, 5);
    expect(collection.records).toEqual([undefined, undefined]);
    expect(collection.bytes).toEqual([3, 5]);
    expect(collection.definedIds()).toEqual(['A']);
    expect(collection.isDefined('A')).toBe(true);
  });
});

describe('the model of a layout', () => {
  it('has all collections of the schema, the holes in columns', () => {
    const model = new LayoutModel();
    for (const name of collections)
      if (name !== 'holes') expect([name, model.collection(name).records]).toEqual([name, []]);
    expect(model.holes.count).toBe(0);
  });
});
