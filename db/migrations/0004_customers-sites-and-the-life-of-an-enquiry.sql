CREATE TABLE `attachment` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`enquiry_id` integer NOT NULL,
	`file_name` text NOT NULL,
	`size_bytes` integer NOT NULL,
	`sha256` text NOT NULL,
	`bytes` blob NOT NULL,
	`added_by` text NOT NULL,
	`added_at` text NOT NULL,
	`removed_at` text,
	FOREIGN KEY (`enquiry_id`) REFERENCES `enquiry`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE INDEX `attachment_by_enquiry` ON `attachment` (`enquiry_id`);--> statement-breakpoint
CREATE TABLE `contact` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`customer_id` integer NOT NULL,
	`site_id` integer,
	`name` text NOT NULL,
	`position` text DEFAULT '' NOT NULL,
	`email` text DEFAULT '' NOT NULL,
	`telephone` text DEFAULT '' NOT NULL,
	`note` text DEFAULT '' NOT NULL,
	`version` integer DEFAULT 1 NOT NULL,
	`archived_at` text,
	`created_at` text NOT NULL,
	`updated_at` text NOT NULL,
	FOREIGN KEY (`customer_id`) REFERENCES `customer`(`id`) ON UPDATE no action ON DELETE restrict,
	FOREIGN KEY (`site_id`) REFERENCES `site`(`id`) ON UPDATE no action ON DELETE set null
);
--> statement-breakpoint
CREATE INDEX `contact_by_customer` ON `contact` (`customer_id`,`name`);--> statement-breakpoint
CREATE TABLE `enquiry_move` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`enquiry_id` integer NOT NULL,
	`from_state` text NOT NULL,
	`to_state` text NOT NULL,
	`at` text NOT NULL,
	`who_id` text NOT NULL,
	`who` text NOT NULL,
	`why` text DEFAULT '' NOT NULL,
	FOREIGN KEY (`enquiry_id`) REFERENCES `enquiry`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE INDEX `enquiry_move_by_enquiry` ON `enquiry_move` (`enquiry_id`);--> statement-breakpoint
CREATE TABLE `enquiry_note` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`enquiry_id` integer NOT NULL,
	`text` text NOT NULL,
	`author_id` text NOT NULL,
	`author` text NOT NULL,
	`written_at` text NOT NULL,
	`changed_at` text,
	`struck_at` text,
	`struck_by` text DEFAULT '' NOT NULL,
	FOREIGN KEY (`enquiry_id`) REFERENCES `enquiry`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE INDEX `enquiry_note_by_enquiry` ON `enquiry_note` (`enquiry_id`);--> statement-breakpoint
CREATE TABLE `site` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`customer_id` integer NOT NULL,
	`name` text NOT NULL,
	`address` text DEFAULT '' NOT NULL,
	`access_note` text DEFAULT '' NOT NULL,
	`facts_json` text NOT NULL,
	`version` integer DEFAULT 1 NOT NULL,
	`archived_at` text,
	`created_at` text NOT NULL,
	`updated_at` text NOT NULL,
	FOREIGN KEY (`customer_id`) REFERENCES `customer`(`id`) ON UPDATE no action ON DELETE restrict
);
--> statement-breakpoint
CREATE INDEX `site_by_customer` ON `site` (`customer_id`,`name`);--> statement-breakpoint
ALTER TABLE `customer` ADD `version` integer DEFAULT 1 NOT NULL;--> statement-breakpoint
ALTER TABLE `customer` ADD `archived_at` text;--> statement-breakpoint
ALTER TABLE `customer` ADD `updated_at` text DEFAULT '' NOT NULL;--> statement-breakpoint
CREATE INDEX `customer_by_name` ON `customer` (`name`);--> statement-breakpoint
ALTER TABLE `enquiry` ADD `site_id` integer REFERENCES site(id);--> statement-breakpoint
ALTER TABLE `enquiry` ADD `site_version` integer;--> statement-breakpoint
ALTER TABLE `enquiry` ADD `contact_id` integer REFERENCES contact(id);--> statement-breakpoint
ALTER TABLE `enquiry` ADD `assigned_to` text DEFAULT '' NOT NULL;--> statement-breakpoint
ALTER TABLE `enquiry` ADD `assigned_name` text DEFAULT '' NOT NULL;--> statement-breakpoint
ALTER TABLE `enquiry` ADD `due_on` text;--> statement-breakpoint
ALTER TABLE `enquiry` ADD `reference` text DEFAULT '' NOT NULL;--> statement-breakpoint
ALTER TABLE `enquiry` ADD `source` text DEFAULT '' NOT NULL;--> statement-breakpoint
CREATE INDEX `enquiry_by_customer` ON `enquiry` (`customer_id`);--> statement-breakpoint
CREATE INDEX `enquiry_by_site` ON `enquiry` (`site_id`);--> statement-breakpoint
CREATE INDEX `enquiry_by_due_day` ON `enquiry` (`due_on`);