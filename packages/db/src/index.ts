export type {
  Clock,
  Database,
  DatabaseConfig,
  FolderConfig,
  MemoryConfig,
  ServerConfig,
  ShopDatabase,
  Tx,
  UnitLimits,
} from './database.ts';
export { forShop } from './engines/engine.ts';
export {
  ConstraintViolation,
  DatabaseUnavailable,
  EngineRefused,
  FolderBusy,
  FolderUnusable,
  ValueRefused,
} from './faults.ts';
export { migrate } from './migrate.ts';
export { openDatabase } from './open.ts';
export { addAnimal, findAnimal, listAnimals, updateAnimal } from './queries/animals.ts';
export {
  addBill,
  addPayment,
  findBill,
  holdOrder,
  listBills,
  listPayments,
  listPaymentsBetween,
} from './queries/bills.ts';
export { findBookSettings, storeBookSettings } from './queries/book-settings.ts';
export type * from './queries/book-shapes.ts';
export {
  closeDay,
  createDay,
  findDay,
  isOpenToCustomers,
  listDays,
  listDaysOpenToCustomers,
  loadCuttingDay,
  setCustomersUntil,
  touchDay,
} from './queries/days.ts';
export {
  addCalendarFeed,
  addClosing,
  addHandOver,
  addPickUpStep,
  findCalendarFeed,
  findClosing,
  findPickUp,
  listPickUps,
  revokeCalendarFeeds,
  setPickUp,
} from './queries/hand-overs.ts';
export { beginIdempotent, finishIdempotent, forgetOldAnswers } from './queries/idempotency.ts';
export {
  addKitchenBatch,
  drawnGrams,
  type KitchenBatchRecord,
  listKitchenBatches,
  listPoolConsents,
  setPoolConsent,
} from './queries/kitchen.ts';
export { listLocks, replaceLocks } from './queries/locks.ts';
export { addMail, endMail, type Mail, type MailEnd, takeMails, wasTold } from './queries/mails.ts';
export {
  addOrder,
  cancelOrder,
  findOrder,
  holdLonger,
  isServed,
  listDaysWaitedForInVain,
  listLapsed,
  listOrders,
  listOrdersOf,
  type Passage,
  passOrder,
  setAssured,
} from './queries/orders.ts';
export {
  addPack,
  confirmPrinted,
  findLabelRun,
  holdAnimal,
  listPackedPieces,
  listPacks,
  releasePacks,
  startLabelRun,
  stopOrders,
  undoPack,
} from './queries/packs.ts';
export { keepPlan, loadPlan, storePlan } from './queries/plans.ts';
export { appendAudit, appendLedger, lastLedgerSeq, listLedger, listLedgerOfDay } from './queries/records.ts';
export type * from './queries/shapes.ts';
export { findShopRules, setShopRules } from './queries/shop-rules.ts';
export {
  createFarm,
  createPerson,
  createSession,
  createShop,
  endOtherSessions,
  endSession,
  findPerson,
  findSession,
  findShop,
  findSignIn,
  forgetExpiredSessions,
  languageOf,
  listFarms,
  listShops,
  setLanguage,
  setPassword,
} from './queries/shops.ts';
export {
  createSignInLink,
  findSignInLink,
  type NewSignInLink,
  revokeSignInLinks,
} from './queries/sign-in-links.ts';
export { trace } from './queries/trace.ts';
export { inTransaction, type TransactionOptions } from './transaction.ts';
