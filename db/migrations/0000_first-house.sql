CREATE TABLE `audit_entry` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`at` text NOT NULL,
	`who` text NOT NULL,
	`action` text NOT NULL,
	`subject` text NOT NULL,
	`detail_json` text NOT NULL
);
--> statement-breakpoint
CREATE INDEX `audit_by_subject` ON `audit_entry` (`subject`,`id`);--> statement-breakpoint
CREATE TABLE `booking_unit` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`booking_id` integer NOT NULL,
	`unit_serial` text NOT NULL,
	`starts_on` text NOT NULL,
	`ends_before` text NOT NULL,
	`free_again_on` text NOT NULL,
	`active` integer DEFAULT true NOT NULL,
	FOREIGN KEY (`booking_id`) REFERENCES `booking`(`id`) ON UPDATE no action ON DELETE cascade,
	FOREIGN KEY (`unit_serial`) REFERENCES `unit`(`serial`) ON UPDATE no action ON DELETE restrict,
	CONSTRAINT "booking_unit_dates" CHECK(starts_on < ends_before AND ends_before <= free_again_on)
);
--> statement-breakpoint
CREATE INDEX `booking_unit_by_unit` ON `booking_unit` (`unit_serial`,`starts_on`);--> statement-breakpoint
CREATE TABLE `booking` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`number` text NOT NULL,
	`quote_id` integer,
	`state` text NOT NULL,
	`held_until` text,
	`note` text DEFAULT '' NOT NULL,
	FOREIGN KEY (`quote_id`) REFERENCES `quote`(`id`) ON UPDATE no action ON DELETE restrict
);
--> statement-breakpoint
CREATE UNIQUE INDEX `booking_number_unique` ON `booking` (`number`);--> statement-breakpoint
CREATE TABLE `customer` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`code` text NOT NULL,
	`name` text NOT NULL,
	`facts_json` text NOT NULL,
	`created_at` text NOT NULL
);
--> statement-breakpoint
CREATE UNIQUE INDEX `customer_code_unique` ON `customer` (`code`);--> statement-breakpoint
CREATE TABLE `enquiry` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`number` text NOT NULL,
	`customer_id` integer NOT NULL,
	`title` text NOT NULL,
	`state` text NOT NULL,
	`site_json` text NOT NULL,
	`constraints_json` text NOT NULL,
	`preference` text NOT NULL,
	`version` integer DEFAULT 1 NOT NULL,
	`created_at` text NOT NULL,
	`updated_at` text NOT NULL,
	FOREIGN KEY (`customer_id`) REFERENCES `customer`(`id`) ON UPDATE no action ON DELETE restrict
);
--> statement-breakpoint
CREATE UNIQUE INDEX `enquiry_number_unique` ON `enquiry` (`number`);--> statement-breakpoint
CREATE INDEX `enquiry_by_state` ON `enquiry` (`state`,`updated_at`);--> statement-breakpoint
CREATE TABLE `house` (
	`id` integer PRIMARY KEY NOT NULL,
	`facts_json` text NOT NULL,
	`updated_at` text NOT NULL
);
--> statement-breakpoint
CREATE TABLE `list_file` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`enquiry_id` integer NOT NULL,
	`file_name` text NOT NULL,
	`bytes` blob NOT NULL,
	`sha256` text NOT NULL,
	`received_at` text NOT NULL,
	`mapping_json` text,
	`outcome_json` text,
	FOREIGN KEY (`enquiry_id`) REFERENCES `enquiry`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE INDEX `list_file_by_enquiry` ON `list_file` (`enquiry_id`);--> statement-breakpoint
CREATE TABLE `model` (
	`number` text PRIMARY KEY NOT NULL,
	`role` text NOT NULL,
	`name` text NOT NULL,
	`facts_json` text NOT NULL,
	`counted_stock` integer
);
--> statement-breakpoint
CREATE TABLE `number_series` (
	`name` text PRIMARY KEY NOT NULL,
	`next` integer NOT NULL
);
--> statement-breakpoint
CREATE TABLE `paper` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`quote_id` integer NOT NULL,
	`kind` text NOT NULL,
	`bytes` blob NOT NULL,
	`sha256` text NOT NULL,
	`created_at` text NOT NULL,
	FOREIGN KEY (`quote_id`) REFERENCES `quote`(`id`) ON UPDATE no action ON DELETE restrict
);
--> statement-breakpoint
CREATE UNIQUE INDEX `paper_of_quote` ON `paper` (`quote_id`,`kind`);--> statement-breakpoint
CREATE TABLE `plan` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`enquiry_id` integer NOT NULL,
	`input_hash` text NOT NULL,
	`state` text NOT NULL,
	`result_json` text NOT NULL,
	`created_at` text NOT NULL,
	FOREIGN KEY (`enquiry_id`) REFERENCES `enquiry`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE INDEX `plan_by_enquiry` ON `plan` (`enquiry_id`,`id`);--> statement-breakpoint
CREATE TABLE `quote` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`enquiry_id` integer NOT NULL,
	`number` text NOT NULL,
	`revision` text NOT NULL,
	`state` text NOT NULL,
	`issued_on` text NOT NULL,
	`valid_until` text NOT NULL,
	`total_minor` integer NOT NULL,
	`currency` text NOT NULL,
	`frozen_json` text NOT NULL,
	FOREIGN KEY (`enquiry_id`) REFERENCES `enquiry`(`id`) ON UPDATE no action ON DELETE restrict
);
--> statement-breakpoint
CREATE UNIQUE INDEX `quote_number_revision` ON `quote` (`number`,`revision`);--> statement-breakpoint
CREATE TABLE `schedule_line` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`enquiry_id` integer NOT NULL,
	`position` integer NOT NULL,
	`row` integer NOT NULL,
	`cells_json` text NOT NULL,
	`measured_json` text DEFAULT '[]' NOT NULL,
	`version` integer DEFAULT 1 NOT NULL,
	FOREIGN KEY (`enquiry_id`) REFERENCES `enquiry`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE INDEX `schedule_line_by_enquiry` ON `schedule_line` (`enquiry_id`,`position`);--> statement-breakpoint
CREATE TABLE `unit` (
	`serial` text PRIMARY KEY NOT NULL,
	`model_number` text NOT NULL,
	`depot` text NOT NULL,
	`bay` text NOT NULL,
	`state` text NOT NULL,
	`inspection_due_on` text,
	`calibration_due_on` text,
	FOREIGN KEY (`model_number`) REFERENCES `model`(`number`) ON UPDATE no action ON DELETE restrict
);
--> statement-breakpoint
CREATE INDEX `unit_by_model` ON `unit` (`model_number`);