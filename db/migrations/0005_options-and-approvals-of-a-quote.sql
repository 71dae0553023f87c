CREATE TABLE `discount_approval` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`enquiry_id` integer NOT NULL,
	`option_slot` integer DEFAULT 0 NOT NULL,
	`asked_json` text NOT NULL,
	`state` text NOT NULL,
	`reason` text NOT NULL,
	`asked_by` text NOT NULL,
	`asked_by_name` text NOT NULL,
	`asked_at` text NOT NULL,
	`decided_by` text DEFAULT '' NOT NULL,
	`decided_by_name` text DEFAULT '' NOT NULL,
	`decided_at` text DEFAULT '' NOT NULL,
	`decision_reason` text DEFAULT '' NOT NULL,
	FOREIGN KEY (`enquiry_id`) REFERENCES `enquiry`(`id`) ON UPDATE no action ON DELETE restrict
);
--> statement-breakpoint
CREATE INDEX `discount_approval_by_enquiry` ON `discount_approval` (`enquiry_id`,`option_slot`,`id`);--> statement-breakpoint
CREATE TABLE `quote_option` (
	`enquiry_id` integer NOT NULL,
	`slot` integer NOT NULL,
	`choices_json` text NOT NULL,
	`version` integer DEFAULT 1 NOT NULL,
	`removed_at` text,
	`updated_at` text NOT NULL,
	PRIMARY KEY(`enquiry_id`, `slot`),
	FOREIGN KEY (`enquiry_id`) REFERENCES `enquiry`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
DROP INDEX `plan_by_enquiry`;--> statement-breakpoint
ALTER TABLE `plan` ADD `option_slot` integer DEFAULT 0 NOT NULL;--> statement-breakpoint
CREATE INDEX `plan_by_enquiry` ON `plan` (`enquiry_id`,`option_slot`,`id`);--> statement-breakpoint
ALTER TABLE `booking` ADD `option_slot` integer DEFAULT 0 NOT NULL;--> statement-breakpoint
ALTER TABLE `quote` ADD `state_reason` text DEFAULT '' NOT NULL;--> statement-breakpoint
ALTER TABLE `quote` ADD `state_by` text DEFAULT '' NOT NULL;--> statement-breakpoint
ALTER TABLE `quote` ADD `state_at` text DEFAULT '' NOT NULL;