CREATE TABLE `house_price` (
	`starts_on` text PRIMARY KEY NOT NULL,
	`prices_json` text NOT NULL,
	`note` text DEFAULT '' NOT NULL
);
--> statement-breakpoint
CREATE TABLE `rate_card` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`model_number` text NOT NULL,
	`starts_on` text NOT NULL,
	`day_minor` integer NOT NULL,
	`week_minor` integer NOT NULL,
	`four_weeks_minor` integer NOT NULL,
	`minimum_days` integer NOT NULL,
	`note` text DEFAULT '' NOT NULL,
	FOREIGN KEY (`model_number`) REFERENCES `model`(`number`) ON UPDATE no action ON DELETE restrict
);
--> statement-breakpoint
CREATE UNIQUE INDEX `rate_card_by_day` ON `rate_card` (`model_number`,`starts_on`);--> statement-breakpoint
CREATE TABLE `record_change` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`subject` text NOT NULL,
	`version` integer NOT NULL,
	`at` text NOT NULL,
	`who_id` text DEFAULT '' NOT NULL,
	`who` text NOT NULL,
	`action` text NOT NULL,
	`before_json` text,
	`after_json` text
);
--> statement-breakpoint
CREATE INDEX `record_change_by_subject` ON `record_change` (`subject`,`id`);--> statement-breakpoint
ALTER TABLE `house` ADD `version` integer DEFAULT 1 NOT NULL;--> statement-breakpoint
ALTER TABLE `model` ADD `version` integer DEFAULT 1 NOT NULL;--> statement-breakpoint
ALTER TABLE `model` ADD `retired_on` text;