CREATE TABLE `booking_extension` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`booking_id` integer NOT NULL,
	`ended_before` text NOT NULL,
	`ends_before` text NOT NULL,
	`serials_json` text NOT NULL,
	`asked_by` text DEFAULT '' NOT NULL,
	`at` text NOT NULL,
	`who_id` text NOT NULL,
	`who` text NOT NULL,
	`why` text DEFAULT '' NOT NULL,
	FOREIGN KEY (`booking_id`) REFERENCES `booking`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE INDEX `booking_extension_by_booking` ON `booking_extension` (`booking_id`);--> statement-breakpoint
CREATE TABLE `booking_item` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`booking_id` integer NOT NULL,
	`model_number` text NOT NULL,
	`count` integer NOT NULL,
	`starts_on` text NOT NULL,
	`ends_before` text NOT NULL,
	`free_again_on` text NOT NULL,
	`state` text DEFAULT 'held' NOT NULL,
	FOREIGN KEY (`booking_id`) REFERENCES `booking`(`id`) ON UPDATE no action ON DELETE cascade,
	FOREIGN KEY (`model_number`) REFERENCES `model`(`number`) ON UPDATE no action ON DELETE restrict,
	CONSTRAINT "booking_item_dates" CHECK(starts_on < ends_before AND ends_before <= free_again_on),
	CONSTRAINT "booking_item_count" CHECK(count > 0)
);
--> statement-breakpoint
CREATE INDEX `booking_item_by_model` ON `booking_item` (`model_number`,`starts_on`);--> statement-breakpoint
CREATE INDEX `booking_item_by_booking` ON `booking_item` (`booking_id`);--> statement-breakpoint
CREATE TABLE `booking_move` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`booking_id` integer NOT NULL,
	`unit_serial` text,
	`what` text NOT NULL,
	`from_state` text NOT NULL,
	`to_state` text NOT NULL,
	`at` text NOT NULL,
	`who_id` text NOT NULL,
	`who` text NOT NULL,
	`why` text DEFAULT '' NOT NULL,
	`detail` text DEFAULT '' NOT NULL,
	FOREIGN KEY (`booking_id`) REFERENCES `booking`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE INDEX `booking_move_by_booking` ON `booking_move` (`booking_id`);--> statement-breakpoint
CREATE INDEX `booking_move_by_unit` ON `booking_move` (`unit_serial`);--> statement-breakpoint
CREATE TABLE `off_hire_notice` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`number` text NOT NULL,
	`booking_id` integer NOT NULL,
	`noticed_at` text NOT NULL,
	`said_by` text NOT NULL,
	`at` text NOT NULL,
	`who_id` text NOT NULL,
	`who` text NOT NULL,
	`note` text DEFAULT '' NOT NULL,
	FOREIGN KEY (`booking_id`) REFERENCES `booking`(`id`) ON UPDATE no action ON DELETE restrict
);
--> statement-breakpoint
CREATE UNIQUE INDEX `off_hire_notice_number_unique` ON `off_hire_notice` (`number`);--> statement-breakpoint
CREATE INDEX `off_hire_notice_by_booking` ON `off_hire_notice` (`booking_id`);--> statement-breakpoint
CREATE TABLE `off_hire_unit` (
	`notice_id` integer NOT NULL,
	`booking_unit_id` integer NOT NULL,
	PRIMARY KEY(`notice_id`, `booking_unit_id`),
	FOREIGN KEY (`notice_id`) REFERENCES `off_hire_notice`(`id`) ON UPDATE no action ON DELETE restrict,
	FOREIGN KEY (`booking_unit_id`) REFERENCES `booking_unit`(`id`) ON UPDATE no action ON DELETE restrict
);
--> statement-breakpoint
CREATE UNIQUE INDEX `off_hire_once` ON `off_hire_unit` (`booking_unit_id`);--> statement-breakpoint
ALTER TABLE `booking_unit` ADD `state` text DEFAULT 'held' NOT NULL;--> statement-breakpoint
ALTER TABLE `booking_unit` ADD `out_on` text;--> statement-breakpoint
ALTER TABLE `booking_unit` ADD `back_on` text;--> statement-breakpoint
ALTER TABLE `booking_unit` ADD `expected_back_on` text;--> statement-breakpoint
ALTER TABLE `booking_unit` ADD `replaces_id` integer REFERENCES booking_unit(id);--> statement-breakpoint
ALTER TABLE `booking_unit` ADD `quoted_model` text DEFAULT '' NOT NULL;--> statement-breakpoint
CREATE INDEX `booking_unit_by_booking` ON `booking_unit` (`booking_id`);--> statement-breakpoint
ALTER TABLE `booking` ADD `depot` text DEFAULT '' NOT NULL;--> statement-breakpoint
ALTER TABLE `booking` ADD `confirmed_at` text;--> statement-breakpoint
ALTER TABLE `booking` ADD `closed_at` text;