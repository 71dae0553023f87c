CREATE TABLE `bay` (
	`depot` text NOT NULL,
	`code` text NOT NULL,
	`walk_order` integer NOT NULL,
	`note` text DEFAULT '' NOT NULL,
	PRIMARY KEY(`depot`, `code`)
);
--> statement-breakpoint
CREATE TABLE `counted_event` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`model_number` text NOT NULL,
	`depot` text NOT NULL,
	`at` text NOT NULL,
	`who_id` text NOT NULL,
	`who` text NOT NULL,
	`before` integer NOT NULL,
	`after` integer NOT NULL,
	`reason` text NOT NULL,
	`reference` text DEFAULT '' NOT NULL,
	FOREIGN KEY (`model_number`) REFERENCES `model`(`number`) ON UPDATE no action ON DELETE restrict
);
--> statement-breakpoint
CREATE INDEX `counted_event_by_model` ON `counted_event` (`model_number`,`id`);--> statement-breakpoint
CREATE TABLE `counted_shelf` (
	`model_number` text NOT NULL,
	`depot` text NOT NULL,
	`bay` text DEFAULT '' NOT NULL,
	`count` integer NOT NULL,
	PRIMARY KEY(`model_number`, `depot`),
	FOREIGN KEY (`model_number`) REFERENCES `model`(`number`) ON UPDATE no action ON DELETE restrict,
	CONSTRAINT "counted_shelf_count" CHECK(count >= 0)
);
--> statement-breakpoint
CREATE TABLE `stocktake_item` (
	`stocktake_id` integer NOT NULL,
	`model_number` text NOT NULL,
	`count` integer NOT NULL,
	`at` text NOT NULL,
	`who_id` text NOT NULL,
	`who` text NOT NULL,
	PRIMARY KEY(`stocktake_id`, `model_number`),
	FOREIGN KEY (`stocktake_id`) REFERENCES `stocktake`(`id`) ON UPDATE no action ON DELETE restrict,
	FOREIGN KEY (`model_number`) REFERENCES `model`(`number`) ON UPDATE no action ON DELETE restrict,
	CONSTRAINT "stocktake_item_count" CHECK(count >= 0)
);
--> statement-breakpoint
CREATE TABLE `stocktake_scan` (
	`stocktake_id` integer NOT NULL,
	`unit_serial` text NOT NULL,
	`bay` text NOT NULL,
	`at` text NOT NULL,
	`who_id` text NOT NULL,
	`who` text NOT NULL,
	PRIMARY KEY(`stocktake_id`, `unit_serial`),
	FOREIGN KEY (`stocktake_id`) REFERENCES `stocktake`(`id`) ON UPDATE no action ON DELETE restrict,
	FOREIGN KEY (`unit_serial`) REFERENCES `unit`(`serial`) ON UPDATE no action ON DELETE restrict
);
--> statement-breakpoint
CREATE TABLE `stocktake` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`number` text NOT NULL,
	`depot` text NOT NULL,
	`bay` text DEFAULT '' NOT NULL,
	`state` text NOT NULL,
	`opened_at` text NOT NULL,
	`opened_by_id` text NOT NULL,
	`opened_by` text NOT NULL,
	`closed_at` text,
	`closed_by_id` text DEFAULT '' NOT NULL,
	`closed_by` text DEFAULT '' NOT NULL,
	`outcome_json` text,
	CONSTRAINT "stocktake_state" CHECK(state IN ('open', 'closed', 'given up'))
);
--> statement-breakpoint
CREATE UNIQUE INDEX `stocktake_number_unique` ON `stocktake` (`number`);--> statement-breakpoint
CREATE UNIQUE INDEX `stocktake_open` ON `stocktake` (`depot`) WHERE state = 'open';--> statement-breakpoint
CREATE TABLE `transfer_item` (
	`transfer_id` integer NOT NULL,
	`model_number` text NOT NULL,
	`count` integer NOT NULL,
	`arrived` integer,
	PRIMARY KEY(`transfer_id`, `model_number`),
	FOREIGN KEY (`transfer_id`) REFERENCES `transfer`(`id`) ON UPDATE no action ON DELETE restrict,
	FOREIGN KEY (`model_number`) REFERENCES `model`(`number`) ON UPDATE no action ON DELETE restrict,
	CONSTRAINT "transfer_item_count" CHECK(count > 0 AND (arrived IS NULL OR (arrived >= 0 AND arrived <= count)))
);
--> statement-breakpoint
CREATE TABLE `transfer_unit` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`transfer_id` integer NOT NULL,
	`unit_serial` text NOT NULL,
	`sent_on` text NOT NULL,
	`due_on` text NOT NULL,
	`active` integer DEFAULT true NOT NULL,
	FOREIGN KEY (`transfer_id`) REFERENCES `transfer`(`id`) ON UPDATE no action ON DELETE restrict,
	FOREIGN KEY (`unit_serial`) REFERENCES `unit`(`serial`) ON UPDATE no action ON DELETE restrict
);
--> statement-breakpoint
CREATE INDEX `transfer_unit_by_unit` ON `transfer_unit` (`unit_serial`);--> statement-breakpoint
CREATE INDEX `transfer_unit_by_transfer` ON `transfer_unit` (`transfer_id`);--> statement-breakpoint
CREATE TABLE `transfer` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`number` text NOT NULL,
	`from_depot` text NOT NULL,
	`to_depot` text NOT NULL,
	`state` text NOT NULL,
	`sent_on` text NOT NULL,
	`due_on` text NOT NULL,
	`arrived_on` text,
	`note` text DEFAULT '' NOT NULL,
	`sent_by_id` text NOT NULL,
	`sent_by` text NOT NULL,
	`arrived_by_id` text DEFAULT '' NOT NULL,
	`arrived_by` text DEFAULT '' NOT NULL,
	CONSTRAINT "transfer_depots" CHECK(from_depot <> to_depot),
	CONSTRAINT "transfer_dates" CHECK(sent_on < due_on),
	CONSTRAINT "transfer_state" CHECK(state IN ('on the way', 'arrived'))
);
--> statement-breakpoint
CREATE UNIQUE INDEX `transfer_number_unique` ON `transfer` (`number`);--> statement-breakpoint
CREATE TABLE `unit_event` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`unit_serial` text NOT NULL,
	`at` text NOT NULL,
	`who_id` text NOT NULL,
	`who` text NOT NULL,
	`kind` text NOT NULL,
	`before` text DEFAULT '' NOT NULL,
	`after` text DEFAULT '' NOT NULL,
	`reason` text DEFAULT '' NOT NULL,
	`reference` text DEFAULT '' NOT NULL,
	FOREIGN KEY (`unit_serial`) REFERENCES `unit`(`serial`) ON UPDATE no action ON DELETE restrict
);
--> statement-breakpoint
CREATE INDEX `unit_event_by_unit` ON `unit_event` (`unit_serial`,`id`);--> statement-breakpoint
ALTER TABLE `unit` ADD `inspection_done_on` text;--> statement-breakpoint
ALTER TABLE `unit` ADD `calibration_done_on` text;--> statement-breakpoint
ALTER TABLE `unit` ADD `run_hours` real DEFAULT 0 NOT NULL;--> statement-breakpoint
ALTER TABLE `unit` ADD `note` text DEFAULT '' NOT NULL;--> statement-breakpoint
CREATE INDEX `unit_by_bay` ON `unit` (`depot`,`bay`);--> statement-breakpoint
INSERT INTO `bay` (`depot`, `code`, `walk_order`)
	SELECT `depot`, `bay`, row_number() OVER (PARTITION BY `depot` ORDER BY `bay`)
	FROM (SELECT DISTINCT `depot`, `bay` FROM `unit` WHERE `bay` <> '');
--> statement-breakpoint
INSERT INTO `counted_shelf` (`model_number`, `depot`, `count`)
	SELECT `number`, (SELECT json_extract(`facts_json`, '$.depots[0].code') FROM `house`), `counted_stock`
	FROM `model` WHERE `counted_stock` > 0;
