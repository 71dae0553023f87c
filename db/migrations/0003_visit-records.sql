CREATE TABLE `visit_record` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`customer_id` integer NOT NULL,
	`site_key` text NOT NULL,
	`tag_key` text NOT NULL,
	`site` text NOT NULL,
	`tag` text NOT NULL,
	`number` integer NOT NULL,
	`visited_on` text NOT NULL,
	`cells_json` text NOT NULL,
	`enquiry_id` integer NOT NULL,
	`under` text NOT NULL,
	`set_aside` text DEFAULT '' NOT NULL,
	`recorded_by` text NOT NULL,
	`recorded_at` text NOT NULL,
	FOREIGN KEY (`customer_id`) REFERENCES `customer`(`id`) ON UPDATE no action ON DELETE restrict,
	FOREIGN KEY (`enquiry_id`) REFERENCES `enquiry`(`id`) ON UPDATE no action ON DELETE restrict
);
--> statement-breakpoint
CREATE UNIQUE INDEX `visit_record_of_valve_and_day` ON `visit_record` (`customer_id`,`site_key`,`tag_key`,`number`,`visited_on`);--> statement-breakpoint
CREATE INDEX `visit_record_by_enquiry` ON `visit_record` (`enquiry_id`);