CREATE TABLE `api_key` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`customer_id` integer NOT NULL,
	`name` text NOT NULL,
	`key_hash` text NOT NULL,
	`shown_end` text NOT NULL,
	`created_at` text NOT NULL,
	`created_by` text NOT NULL,
	`revoked_at` text DEFAULT '' NOT NULL,
	`last_used_at` text DEFAULT '' NOT NULL,
	FOREIGN KEY (`customer_id`) REFERENCES `customer`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE UNIQUE INDEX `api_key_key_hash_unique` ON `api_key` (`key_hash`);--> statement-breakpoint
CREATE INDEX `api_key_of_customer` ON `api_key` (`customer_id`);--> statement-breakpoint
CREATE TABLE `kept_answer` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`scope` text NOT NULL,
	`key` text NOT NULL,
	`request_hash` text NOT NULL,
	`answer_json` text NOT NULL,
	`at` text NOT NULL
);
--> statement-breakpoint
CREATE UNIQUE INDEX `kept_answer_by_key` ON `kept_answer` (`scope`,`key`);--> statement-breakpoint
CREATE INDEX `kept_answer_by_age` ON `kept_answer` (`at`);--> statement-breakpoint
CREATE TABLE `line_answer` (
	`line_id` integer PRIMARY KEY NOT NULL,
	`unknown_json` text DEFAULT '[]' NOT NULL,
	`photo_id` integer,
	FOREIGN KEY (`line_id`) REFERENCES `schedule_line`(`id`) ON UPDATE no action ON DELETE cascade,
	FOREIGN KEY (`photo_id`) REFERENCES `attachment`(`id`) ON UPDATE no action ON DELETE set null
);
--> statement-breakpoint
CREATE TABLE `order_link` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`enquiry_id` integer NOT NULL,
	`token_hash` text NOT NULL,
	`scope` text NOT NULL,
	`created_at` text NOT NULL,
	`expires_at` text NOT NULL,
	`withdrawn_at` text DEFAULT '' NOT NULL,
	`last_used_at` text DEFAULT '' NOT NULL,
	FOREIGN KEY (`enquiry_id`) REFERENCES `enquiry`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE UNIQUE INDEX `order_link_token_hash_unique` ON `order_link` (`token_hash`);--> statement-breakpoint
CREATE INDEX `order_link_of_enquiry` ON `order_link` (`enquiry_id`);--> statement-breakpoint
CREATE TABLE `self_order` (
	`enquiry_id` integer PRIMARY KEY NOT NULL,
	`stage` text NOT NULL,
	`stage_at` text NOT NULL,
	`language` text NOT NULL,
	`contact_json` text DEFAULT '{}' NOT NULL,
	`reasons_json` text DEFAULT '[]' NOT NULL,
	`from_enquiry_id` integer,
	`by_key_id` integer,
	`taken_by` text DEFAULT '' NOT NULL,
	`taken_name` text DEFAULT '' NOT NULL,
	`created_at` text NOT NULL,
	FOREIGN KEY (`enquiry_id`) REFERENCES `enquiry`(`id`) ON UPDATE no action ON DELETE cascade,
	FOREIGN KEY (`from_enquiry_id`) REFERENCES `enquiry`(`id`) ON UPDATE no action ON DELETE set null
);
--> statement-breakpoint
CREATE INDEX `self_order_by_stage` ON `self_order` (`stage`,`stage_at`);