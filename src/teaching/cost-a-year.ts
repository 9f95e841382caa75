/** What a new sling and a new device cost a year: exercise of the debate on repair. Worked by the engine of costs. */
import { orderCost, yearlyShare } from '../replacement/cost.ts';
import { column, type Exercise, given, place } from './exercise.ts';

export const costAYear: Exercise = {
  lesson: 'repair-law-and-risk',
  task: 'A workshop that the maker names offers the club new slings for {devices} devices at {work} each. Both parcels together cost {shipping}. By the maker, the metal has {metal} left. New devices cost {price} each and last {life}. The money has no name, and there is no interest.',
  asks: ['What does the workshop cost in all?', 'What is that for one device and year?', 'What does a new device cost a year?', 'At which price of a new device would both cost the same a year?'],
  working: [
    'Devices times price, and both parcels: {total}.',
    'That over the devices and over the years that the metal has left: {sewnYear}.',
    'Its price over its years: {newYear}.',
    'The years of a new device times what the new sling costs a year: {equal}.',
  ],
  sees: 'The bill alone does not decide. Years count, parcels are shared by many devices, and the law and the maker come before both.',
  given: [
    column('devices', 'Devices', '', 0), column('work', 'Sling each', '', 1), column('shipping', 'Parcels', '', 0),
    column('metal', 'Metal left', 'years', 1), column('price', 'New device', '', 0), column('life', 'Its life', 'years', 1),
  ],
  fixed: [],
  between: [],
  answers: [column('total', 'Workshop in all', '', 2), column('sewnYear', 'New sling a year', '', 3), column('newYear', 'New device a year', '', 3), column('equal', 'Equal at', '', 2)],
  figures: [],
  work(variant) {
    const devices = given(4, 1, place(variant, 23), 0);
    const work = given(12, 0.5, place(variant, 18), 1);
    const shipping = given(20, 1, place(variant, 14), 0);
    const metal = given(4, 0.2, place(variant, 29), 1);
    const price = given(55, 1, place(variant, 24), 0);
    const life = given(10, 0.1, place(variant, 13), 1);
    const { total } = orderCost({ steps: [{ from: 1, each: work }], least: 1, there: shipping, back: 0, weeks: 0, weekCost: 0 }, devices);
    const sewnYear = (total / devices) * yearlyShare(metal, 0);
    return { devices, work, shipping, metal, price, life, total, sewnYear, newYear: price * yearlyShare(life, 0), equal: sewnYear * life };
  },
};
